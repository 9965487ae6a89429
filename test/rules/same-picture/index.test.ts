import assert from 'node:assert/strict';
import { judge } from '../../../src/rules';
import { judged } from '../support/judged';
import { type PictureOptions, picture } from '../support/pictures';

const sha = (letter: string) => letter.repeat(64);
const placed = (path: string, content: string, lines: number[], options: PictureOptions = {}) => ({
  ...picture('rgb-neutral', { path, ...options, facts: { sha256: sha(content), ...options.facts } }),
  placedAt: lines.map(line => ({ file: 'book.md', line, column: 1 })),
  position: lines[0] ?? null,
});
const found = (...pictures: ReturnType<typeof placed>[]) => judged(pictures, 'same-picture');

describe('same-picture', () => {
  describe('passes', () => {
    it('pictures of other content, and one that is placed twice', () =>
      assert.deepEqual(found(placed('a.tif', 'a', [1, 9]), placed('b.tif', 'b', [2])).named, []));
    it('a copy that no layout places', () =>
      assert.deepEqual(found(placed('a.tif', 'a', [1]), placed('b.tif', 'a', [])).named, []));
    it('the pages of one file, and files that cannot be read', () => {
      const second = placed('a.tif', 'a', [1], { facts: { page: 2 } });
      assert.deepEqual(found(placed('a.tif', 'a', [1]), second).named, []);
      const missing = { facts: { unreadable: { reason: 'missing', text: '' } as const } };
      assert.deepEqual(
        found(placed('a.tif', 'a', [1], missing), placed('b.tif', 'a', [2], missing)).named,
        [],
      );
    });
  });
  describe('fails', () => {
    it('the later of two of one content, in the order of the book, whatever it is meant to be', () => {
      const { named, pictures } = found(
        placed('a.tif', 'a', [9], { intent: 'colour' }),
        placed('b.tif', 'a', [3]),
        placed('c.tif', 'c', [5]),
      );
      assert.deepEqual(named, ['a.tif']);
      const [{ severity, message, data }] = pictures[0];
      assert.equal(severity, 'note');
      assert.match(message, /book\.md:9 places it, and book\.md:3 places b\.tif, which is the same file/);
      assert.deepEqual(data, { same: 'b.tif', copies: 2 });
    });
    it('the one that changed, where the other did not, in whatever order', () => {
      const both = [placed('a.tif', 'a', [1]), placed('b.tif', 'a', [3]), placed('c.tif', 'a', [5])];
      const named = (...changed: string[]) => {
        const { pictures } = judge({ pictures: both, targets: both[0].targets, changed: new Set(changed) });
        return both.flatMap(({ path }, i) =>
          pictures[i].filter(({ rule }) => rule === 'same-picture').map(({ data }) => `${path} ${data.same}`),
        );
      };
      assert.deepEqual(named(), ['b.tif a.tif', 'c.tif a.tif']);
      assert.deepEqual(named('a.tif'), ['a.tif b.tif', 'c.tif b.tif']);
      assert.deepEqual(named('a.tif', 'b.tif', 'c.tif'), named());
    });
  });
});
