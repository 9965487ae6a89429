import assert from 'node:assert/strict';
import path from 'node:path';
import { factsVersion } from '../../../src/book/cache/version';
import { temporaryFolder, write } from '../support/folder';

describe('version of the facts', () => {
  it('follows the reader’s code and the decoder’s release', async () => {
    const release = (version: string) => ({
      'node_modules/sharp/package.json': JSON.stringify({ name: 'sharp', version, main: 'lib/index.js' }),
      'node_modules/sharp/lib/index.js': '',
    });
    const root = temporaryFolder({ 'dist/reader.js': 'one', ...release('1.0.0') });
    const version = () => factsVersion(path.join(root, 'dist/reader.js'));
    const first = await version();
    assert.equal(await version(), first);
    write(root, release('1.0.1'));
    const second = await version();
    assert.notEqual(second, first);
    write(root, { 'dist/reader.js': 'two' });
    assert.notEqual(await version(), second);
  });
});
