import assert from 'node:assert/strict';
import { namesPicture } from '../../../src/book/discovery/extensions';

describe('extensions', () => {
  it('tell a picture by its name', () => {
    for (const name of ['a.jpg', 'b/a.TIFF', 'a.b.heic', 'x.svg']) assert.ok(namesPicture(name), name);
    for (const name of ['jpg', 'a.jpg/b', 'a.txt', 'a.jpg.txt', 'a.']) assert.ok(!namesPicture(name), name);
  });
});
