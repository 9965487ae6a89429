import assert from 'node:assert/strict';
import { judged } from '../support/judged';
import { picture, unreadable } from '../support/pictures';

const pointers = (n: number) =>
  Array.from({ length: n }, (_, i) => unreadable('not-fetched', 'Fetch it.', { path: `p${i}.tif` }));

describe('not-fetched', () => {
  describe('passes', () => {
    it('pictures that are here, and a broken one', () =>
      assert.deepEqual(judged([picture('rgb-neutral'), unreadable('corrupt', '')], 'not-fetched').named, []));
  });
  describe('fails', () => {
    it('each of a few pointers', () => {
      const { named, book } = judged(pointers(3));
      assert.equal(named.length, 3);
      assert.deepEqual(book, []);
    });
    it('a hundred pointers in one line for the book, that names none twice', () => {
      const { named, book } = judged(pointers(100));
      assert.deepEqual(named, []);
      assert.equal(book.length, 1);
      assert.equal(book[0].severity, 'error');
      assert.match(book[0].message, /100 pictures .*p0\.tif, p1\.tif, p2\.tif and 97 more/);
      assert.equal((book[0].data.pictures as string[]).length, 100);
    });
  });
});
