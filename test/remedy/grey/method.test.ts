import assert from 'node:assert/strict';
import { lightness } from '../../../src/colour/lab';
import { srgbToLab } from '../../../src/colour/srgb';
import { srgbCurve } from '../../../src/colour/tone-curves';
import { AdditiveRgb } from '../../../src/picture/meaning/additive';
import { untagged } from '../../../src/picture/meaning/untagged';
import { channelShares, greyOfLab } from '../../../src/remedy/grey/method';
import { RemedyError } from '../../../src/remedy/remedy-error';
import type { GreyMethod } from '../../../src/shared/remedy';

const COLOURS = [
  [0.2, 0.5, 0.9],
  [1, 0, 0],
  [0, 0.6, 0.1],
  [0.8, 0.75, 0.05],
  [0.5, 0.5, 0.5],
];
const METHODS: GreyMethod[] = [
  { kind: 'lightness' },
  { kind: 'luma' },
  { kind: 'mix', red: 0.8, green: 0.3, blue: 0.1 },
  { kind: 'mix', red: 2, green: 3, blue: 5 },
];

const ofLab = (method: GreyMethod, rgb: number[]) => {
  const [L, a, b] = srgbToLab(rgb, new Float64Array(3));
  return greyOfLab(method)(L, a, b);
};

function ofChannels(method: GreyMethod, rgb: number[]): number {
  const { share, sumIs } = channelShares(method, untagged({ space: 'rgb' }).meaning as AdditiveRgb);
  const sum = rgb.reduce((total, value, c) => total + share[c](value), 0);
  return lightness(100 * (sumIs === 'light' ? sum : srgbCurve.decode(sum)));
}

describe('ways from colour to grey', () => {
  it('are those of their definitions', () => {
    const [r, g, b] = COLOURS[0];
    const linear = COLOURS[0].map(srgbCurve.decode);
    const close = (found: number, wanted: number) =>
      assert.ok(Math.abs(found - wanted) < 0.01, `${found}, not ${wanted}`);
    close(ofLab(METHODS[0], COLOURS[0]), srgbToLab(COLOURS[0], new Float64Array(3))[0]);
    close(
      ofLab(METHODS[1], COLOURS[0]),
      lightness(100 * srgbCurve.decode(0.2126 * r + 0.7152 * g + 0.0722 * b)),
    );
    close(
      ofLab(METHODS[3], COLOURS[0]),
      lightness(100 * (0.2 * linear[0] + 0.3 * linear[1] + 0.5 * linear[2])),
    );
  });
  it('come to the same by CIELAB and by channels that add up', () => {
    for (const method of METHODS)
      for (const rgb of COLOURS) {
        const [one, other] = [ofLab(method, rgb), ofChannels(method, rgb)];
        assert.ok(Math.abs(one - other) < 0.01, `${JSON.stringify(method)} ${rgb}: ${one}, ${other}`);
      }
  });
  it('weigh the same colour alike when it was stored with other primaries', () => {
    // columns of sRGB's matrix mixed: a wider space whose channels are sums of sRGB's
    const { light, matrix } = untagged({ space: 'rgb' }).meaning as AdditiveRgb;
    const swapped = new AdditiveRgb(
      [light[1], light[0], light[2]],
      matrix.map((_, i) => matrix[i - (i % 3) + [1, 0, 2][i % 3]]),
    );
    const [r, g, b] = COLOURS[3];
    const { share } = channelShares(METHODS[2], swapped);
    const sum = share[0](g) + share[1](r) + share[2](b);
    assert.ok(Math.abs(lightness(100 * sum) - ofLab(METHODS[2], COLOURS[3])) < 0.01);
  });
  it('keep greys as light as they are', () => {
    for (const method of METHODS)
      assert.ok(Math.abs(ofLab(method, [0.4, 0.4, 0.4]) - ofLab(METHODS[0], [0.4, 0.4, 0.4])) < 0.02);
  });
  it('refuse weights that would lose white, in words', () => {
    assert.throws(
      () => greyOfLab({ kind: 'mix', red: 1, green: -1, blue: 0 }),
      (error: Error) =>
        error instanceof RemedyError && /White would not stay white.*add up to 0/.test(error.message),
    );
  });
});
