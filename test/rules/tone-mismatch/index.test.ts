import assert from 'node:assert/strict';
import { judged } from '../support/judged';
import { type PictureOptions, picture, toneOf } from '../support/pictures';

type Steps = Parameters<typeof toneOf>[0];
const brown: Steps = [
  [30, 2, 6],
  [60, 4, 12],
  [90, 1, 4],
];
function toned(steps: Steps, options: PictureOptions = {}) {
  const whole = picture('rgb-toned', { intent: 'toned', ...options });
  whole.facts.chroma!.zones = toneOf(steps);
  return { ...whole, reference: 'reference.tif' };
}
const reference = toned(brown, { path: 'reference.tif' });
const found = (...book: ReturnType<typeof toned>[]) => judged([reference, ...book], 'tone-mismatch');

describe('tone-mismatch', () => {
  describe('passes', () => {
    it('the reference itself and a picture in its tone', () =>
      assert.deepEqual(found(toned(brown)).named, []));
    it('a picture of other lightnesses in the same tone', () =>
      assert.deepEqual(
        found(
          toned([
            [45, 3, 9],
            [75, 2.5, 8],
          ]),
        ).named,
        [],
      ));
    it('a book that names no reference, or one that is not there', () => {
      const odd = toned([[50, -5, -5]]);
      assert.deepEqual(judged([{ ...odd, reference: null }], 'tone-mismatch').named, []);
      assert.deepEqual(judged([odd], 'tone-mismatch').named, []);
    });
  });
  describe('fails', () => {
    it('a redder brown, with how far it is off and where most', () => {
      const [, [finding]] = found(
        toned([
          [30, 4, 6],
          [60, 8, 12],
        ]),
      ).pictures;
      assert.equal(finding.severity, 'warning');
      assert.match(
        finding.message,
        /about 3\.0 away in a\*, b\* from that of reference\.tif at the same lightness, most at L\* 60/,
      );
    });
    it('a neutral picture among toned ones', () =>
      assert.equal(
        found(
          toned([
            [30, 0, 0],
            [60, 0, 0],
          ]),
        ).named.length,
        1,
      ));
  });
});
