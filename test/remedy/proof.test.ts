import assert from 'node:assert/strict';
import { lightness } from '../../src/colour/lab';
import { srgbCurve } from '../../src/colour/tone-curves';
import { untagged } from '../../src/picture/meaning/untagged';
import type { Samples } from '../../src/picture/types';
import { linearLightness, PER_L, type TonePlane } from '../../src/remedy/grey/plane';
import { differenceOf } from '../../src/remedy/proof';

const intended = (tones: number[]): TonePlane => ({
  width: tones.length,
  height: 1,
  index: Uint16Array.from(tones, L => Math.round(L * PER_L)),
  lightness: linearLightness(),
  alpha: null,
  tint: null,
  colour: null,
});

const LEVELS = [0, 50, 128, 255];
const tone = (level: number) => lightness(100 * srgbCurve.decode(level / 255));
const tones = LEVELS.map(tone);

function read(
  space: 'grey' | 'rgb',
  data: number[],
  alpha = false,
): [Samples, ReturnType<typeof untagged>['meaning']] {
  const channels = space === 'grey' ? 1 : 3;
  const width = data.length / (channels + (alpha ? 1 : 0));
  return [
    { width, height: 1, channels, alpha, space, data: Uint8Array.from(data) },
    untagged({ space }).meaning,
  ];
}

describe('the difference of a picture that was read from what was intended', () => {
  for (const [name, picture] of [
    ['one channel', read('grey', LEVELS)],
    [
      'one channel with alpha',
      read(
        'grey',
        LEVELS.flatMap(v => [v, 9]),
        true,
      ),
    ],
    [
      'R = G = B',
      read(
        'rgb',
        LEVELS.flatMap(v => [v, v, v]),
      ),
    ],
    [
      'R = G = B with alpha',
      read(
        'rgb',
        LEVELS.flatMap(v => [v, v, v, 7]),
        true,
      ),
    ],
  ] as const)
    it(`is the largest of any pixel, and the mean: ${name}`, () => {
      const { maxError, meanError } = differenceOf(
        intended([tones[0], tones[1] + 2, tones[2] - 1, tones[3]]),
        ...picture,
      );
      assert.ok(
        Math.abs(maxError - 2) < 2e-3 && Math.abs(meanError - 0.75) < 2e-3,
        `${maxError} ${meanError}`,
      );
      assert.ok(differenceOf(intended(tones), ...picture).maxError < 1e-3);
    });
  /** More pixels than are compared at a time, and no whole number of those. */
  const MANY = 2 * 2 ** 14 + 1237;
  const levelAt = (i: number) => (i * i + (i >> 4)) & 255;
  const wanted = Float32Array.from({ length: MANY }, (_, i) => tone(levelAt(i)) + ((i * 7919) % 600) / 1000);
  const plane = intended([...wanted].map(L => Math.min(100, L)));
  const plain = wanted.map((_, i) => Math.abs(plane.lightness[plane.index[i]] - tone(levelAt(i))));
  const most = plain.reduce((largest, each) => Math.max(largest, each), 0);
  const mean = plain.reduce((sum, each) => sum + each, 0) / MANY;
  const levels = Array.from({ length: MANY }, (_, i) => levelAt(i));

  for (const [name, picture] of [
    ['one channel', read('grey', levels)],
    [
      'R = G = B',
      read(
        'rgb',
        levels.flatMap(v => [v, v, v]),
      ),
    ],
    [
      'R = G = B with alpha',
      read(
        'rgb',
        levels.flatMap(v => [v, v, v, 7]),
        true,
      ),
    ],
  ] as const)
    it(`is that of plain arithmetic over many pixels: ${name}`, () => {
      const { maxError, meanError } = differenceOf(plane, ...picture);
      assert.ok(Math.abs(maxError - most) < 1e-4, `${maxError}, not ${most}`);
      assert.ok(Math.abs(meanError - mean) < 1e-5, `${meanError}, not ${mean}`);
    });

  it('is taken by the meaning where a single channel of a single pixel differs, wherever that is', () => {
    for (const at of [0, 1, 2, 3 * 2 ** 14, 3 * 20_001 + 1, 3 * MANY - 3, 3 * MANY - 2, 3 * MANY - 1]) {
      const [samples, meaning] = read(
        'rgb',
        levels.flatMap(v => [v, v, v]),
      );
      // so far that it is the largest difference, but for blue, which weighs little
      samples.data[at] = samples.data[at] < 128 ? 255 : 0;
      const { maxError } = differenceOf(plane, samples, meaning);
      assert.ok(Math.abs(maxError - most) > 1, `sample ${at}: ${maxError}`);
    }
  });

  it('goes by the meaning where channels differ', () => {
    const { maxError } = differenceOf(
      intended(tones),
      ...read('rgb', [0, 0, 0, 50, 50, 50, 128, 129, 128, 255, 255, 255]),
    );
    assert.ok(maxError > 0.2 && maxError < 0.4, `${maxError}`);
  });
});
