import assert from 'node:assert/strict';
import { srgbToLab } from '../../../src/colour/srgb';
import { greyOfLab } from '../../../src/remedy/grey/method';
import { greyPresets } from '../../../src/remedy/grey/presets';

// sRGB values of patches of the common 24-patch chart (McCamy, Marcus and Davidson 1976), from memory
const SKY = [98, 122, 157];
const SKIN = [194, 150, 130];
const DARK_SKIN = [115, 82, 68];
const FOLIAGE = [87, 108, 67];

/** How much lighter a preset makes a colour than its own lightness, L*. */
function change(id: string, rgb: number[]): number {
  const [L, a, b] = srgbToLab(
    rgb.map(v => v / 255),
    new Float64Array(3),
  );
  const preset = greyPresets.find(preset => preset.id === id)!;
  return greyOfLab(preset.method)(L, a, b) - L;
}

describe('channel mixes by name', () => {
  for (const [id, colour, way] of [
    ['darker-sky', SKY, -1],
    ['lighter-sky', SKY, 1],
    ['lighter-skin', SKIN, 1],
    ['lighter-skin', DARK_SKIN, 1],
    ['darker-skin', SKIN, -1],
    ['darker-skin', DARK_SKIN, -1],
    ['lighter-foliage', FOLIAGE, 1],
    ['darker-foliage', FOLIAGE, -1],
  ] as const)
    it(`${id} does what it says to ${colour}: by 1.5 L* at least`, () => {
      const by = change(id, [...colour]);
      assert.ok(by * way >= 1.5, `moves it by ${by.toFixed(1)}`);
    });
  it('all have a test of what they say, a reason and a name of their own', () => {
    assert.deepEqual(
      greyPresets.map(({ id }) => id),
      ['darker-sky', 'lighter-sky', 'lighter-skin', 'darker-skin', 'lighter-foliage', 'darker-foliage'],
    );
    for (const { does, why } of greyPresets) assert.ok(does.length > 10 && why.length > 10);
  });
});
