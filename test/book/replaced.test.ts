import assert from 'node:assert/strict';
import { markReplaced, replacedNotices } from '../../src/book/replaced';
import { defaultTarget } from '../../src/print';
import type { BookPicture } from '../../src/shared/finding';
import type { PictureFacts } from '../../src/shared/picture';
import { brokenFacts, greyFacts } from './support/facts';

const hash = (letter: string) => letter.repeat(64);
const of = (from: string, change: Partial<PictureFacts> = {}): Partial<PictureFacts> => ({
  remedied: { from: hash(from), to: 'rgb-neutral', toned: false, fitted: false },
  ...change,
});
const picture = (path: string, own: string, change: Partial<PictureFacts> = {}): BookPicture => ({
  path,
  facts: greyFacts(hash(own), change),
  intent: 'grey',
  intentStated: false,
  part: null,
  targets: [defaultTarget('inkjet')],
  forecasts: [],
  placed: null,
});
const marked = (...pictures: BookPicture[]) => {
  markReplaced(pictures);
  return pictures.map(({ replacedBy = null, targets }) => [replacedBy, targets.length]);
};

describe('a replaced picture', () => {
  it('is every one of which the book holds a converted copy, and is printed nowhere', () => {
    assert.deepEqual(
      marked(
        picture('a-grey.png', 'b', of('a')),
        picture('a.png', 'a'),
        picture('again/a.png', 'a'),
        picture('c.png', 'c'),
      ),
      [
        [null, 1],
        ['a-grey.png', 0],
        ['a-grey.png', 0],
        [null, 1],
      ],
    );
  });

  it('may be a copy itself, of which another was made; of several the first is named', () => {
    assert.deepEqual(
      marked(
        picture('a.png', 'a'),
        picture('b.png', 'b', of('a')),
        picture('c.png', 'c', of('b')),
        picture('d.png', 'd', of('a')),
      ),
      [
        ['b.png', 0],
        ['c.png', 0],
        [null, 1],
        [null, 1],
      ],
    );
  });

  it('is none where the copy cannot be read, or the original is not in the book', () => {
    const broken = { ...brokenFacts('truncated'), ...of('a') } as PictureFacts;
    assert.deepEqual(marked({ ...picture('a-grey.png', 'b'), facts: broken }, picture('a.png', 'a')), [
      [null, 1],
      [null, 1],
    ]);
    assert.deepEqual(marked(picture('a.png', 'a', of('z'))), [[null, 1]]);
  });

  it('is told once for the book, with the names of some', () => {
    assert.deepEqual(replacedNotices([picture('a.png', 'a')]), []);
    const pages = ['a.tif', 'a.tif'].map(path => ({ ...picture(path, 'a'), replacedBy: 'a-grey.tif' }));
    assert.deepEqual(replacedNotices(pages), [
      'One picture is replaced by a converted copy and is not judged: a.tif by a-grey.tif.',
    ]);
    const many = Array.from({ length: 8 }, (_, i) => ({ ...picture(`${i}.png`, 'a'), replacedBy: 'x.png' }));
    const [notice, ...others] = replacedNotices(many);
    assert.match(
      notice,
      /^8 pictures are replaced by converted copies and are not judged: 0\.png by x\.png, .* and 2 more\.$/,
    );
    assert.deepEqual(others, []);
  });
});
