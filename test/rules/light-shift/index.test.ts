import assert from 'node:assert/strict';
import type { BookPicture } from '../../../src/shared/finding';
import type { AB } from '../../../src/shared/forecast';
import { judged } from '../support/judged';
import { picture, pictures, target } from '../support/pictures';

const lamp = [target('liquid-toner', { light: 'LED-B1', route: 'inks' })];
/** A picture whose forecast says so of the light: how much it says is tested where it is computed. */
function lit(light: AB, encoding: 'rgb-neutral' | 'black-only' = 'rgb-neutral'): BookPicture {
  const whole = picture(encoding, { targets: lamp });
  const [forecast] = whole.forecasts;
  return { ...whole, forecasts: [{ ...forecast, parts: { ...forecast.parts, light } }] };
}
const warmed = { a: 1, b: 3 };
const still = { a: 0, b: 0 };

describe('light-shift', () => {
  describe('passes', () => {
    it('daylight: no change by definition', () =>
      assert.deepEqual(judged(pictures(3, 'rgb-neutral'), 'light-shift').book, []));
    it('a small change', () => assert.deepEqual(judged([lit({ a: 1, b: 1 })], 'light-shift').book, []));
  });
  describe('fails', () => {
    it('a book that changes alike, in one note that names the light and no direction', () => {
      const { named, book } = judged([lit(warmed), lit(warmed), lit(warmed)], 'light-shift');
      assert.deepEqual(named, []);
      assert.equal(book.length, 1);
      assert.match(book[0].message, /^Under LED-B1 the greys of this book look about 3\.2 away/);
      assert.doesNotMatch(book[0].message, /warm|bluish|greenish|pinkish/);
    });
    it('the picture that parts from its neighbours', () => {
      const odd = lit(still, 'black-only');
      const { named } = judged([lit(warmed), lit(warmed), odd, lit(warmed)], 'light-shift');
      assert.deepEqual(named, [odd.path]);
    });
  });
});
