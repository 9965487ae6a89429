import assert from 'node:assert/strict';
import { severalPagesNotices } from '../../src/book/several-pages';
import { picture } from '../rules/support/pictures';

const page = (path: string, number: number) => picture('rgb-neutral', { path, facts: { page: number } });

describe('files of several pages', () => {
  it('are told with what to do before a conversion, which takes none', () => {
    assert.deepEqual(severalPagesNotices([page('a.tif', 1), page('a.tif', 2), page('a.tif', 3)]), [
      'a.tif holds several pages, each judged as a picture: save each page as a file of its own before it is converted.',
    ]);
    assert.match(
      severalPagesNotices([page('a.tif', 2), page('b.tif', 2)])[0],
      /^a\.tif and b\.tif hold several pages, .* before they are converted\.$/,
    );
  });
  it('are none of one page', () => assert.deepEqual(severalPagesNotices([page('a.tif', 1)]), []));
});
