import assert from 'node:assert/strict';
import type { Encoding } from '../../../src/shared/picture';
import { judged } from '../support/judged';
import { type PictureOptions, picture, toneOf } from '../support/pictures';

function cast(
  steps: Parameters<typeof toneOf>[0],
  options: PictureOptions = {},
  encoding: Encoding = 'rgb-toned',
) {
  const whole = picture(encoding, options);
  whole.facts.chroma!.zones = toneOf(steps);
  return judged([whole], 'uneven-cast').pictures[0];
}
const crossed: Parameters<typeof toneOf>[0] = [
  [25, 2, 5],
  [50, 0, 0],
  [80, -1, -4],
];

describe('uneven-cast', () => {
  describe('passes', () => {
    it('a tone that only fades towards black and paper', () =>
      assert.equal(
        cast([
          [20, 1, 3],
          [50, 4, 12],
          [90, 0.5, 1.5],
        ]).length,
        0,
      ));
    it('a sepia, whose hue moves a little from shadows to lights while its chroma fades', () => {
      // as measured of pictures toned by one curve
      const sepia: typeof crossed = [
        [16, 3.4, 6.3],
        [41, 1.8, 7.4],
        [66, 2.2, 7.8],
        [84, 1, 9.7],
      ];
      assert.equal(cast(sepia).length, 0);
      assert.equal(cast(sepia.map(([L, a, b]) => [L, 3 * a, 3 * b])).length, 0, 'however strong');
    });
    it('a colour of another hue that is too weak to be seen', () =>
      assert.equal(
        cast([
          [20, 0, -1],
          [50, 2, 9],
          [80, -1.5, 0],
        ]).length,
        0,
      ));
    it('a split tone that is meant', () => assert.equal(cast(crossed, { intent: 'toned' }).length, 0));
    it('inks, which the forecast knows better', () => assert.equal(cast(crossed, {}, 'three-ink').length, 0));
    it('a neutral picture', () => assert.equal(cast([[20, 0, 0]]).length, 0));
  });
  describe('fails', () => {
    it('warm shadows beside cool lights, with both', () => {
      const [finding] = cast(crossed);
      assert.equal(finding.severity, 'note');
      assert.match(finding.message, /a\* 2, b\* 5 at L\* 25, but a\* -1, b\* -4 at L\* 80/);
    });
    it('a split tone on either side of its strongest colour', () => {
      const [finding] = cast([
        [25, 5, 3],
        [50, 4, 8],
        [80, -1, 6],
      ]);
      assert.match(finding.message, /: a\* -1, b\* 6 at L\* 80, but a\* 5, b\* 3 at L\* 25/);
    });
    it('a hue that turns', () =>
      assert.equal(
        cast([
          [30, 4, 0],
          [70, 1, 3],
        ]).length,
        1,
      ));
  });
});
