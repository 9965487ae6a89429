import assert from 'node:assert/strict';
import { relativeUri } from '../../../src/report/sarif/uri';
import { AWKWARD } from '../awkward';

describe('a relative URI', () => {
  it('leads back to the path, as URL reads it', () => {
    const base = new URL('file:///book/');
    for (const path of [AWKWARD, 'c:/x.tif', 'plain/01.tif', 'a b/ü?#.tif'])
      assert.equal(decodeURIComponent(new URL(relativeUri(path), base).pathname), `/book/${path}`);
  });

  it('is made of what RFC 3986 allows in a path alone', () => {
    assert.match(relativeUri(AWKWARD), /^([A-Za-z0-9\-._~!$&'()*+,;=@/]|%[0-9A-F]{2})+$/);
  });

  it('bears a name that is no text', () => {
    assert.equal(relativeUri('\ud800.tif'), '%EF%BF%BD.tif');
  });
});
