import assert from 'node:assert/strict';
import { judgeChroma } from '../../../src/picture/judge/chroma';
import { steady } from '../../../src/picture/judge/tone-noise';
import { BLOCK } from '../../../src/picture/pass/tally';
import { random } from '../pass/random';
import { AS_LAB, labCells, labPicture } from './cells';

type Lab = [L: number, a: number, b: number];

/** Of `noise` in a*, by which lightness rises and falls too, as noise in green makes it: pixels, and blocks an eighth. */
function noisy(columns: number, rows: number, noise: number, grey: (x: number, y: number) => Lab) {
  const next = random(5);
  const gauss = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  const moved = ([L, a, b]: Lab, n: number): Lab => [L - 0.4 * n, a + n, b];
  const picture = labPicture(columns, rows, (x, y) => moved(grey(x, y), (gauss() * noise) / BLOCK));
  const pixels = Array.from({ length: columns * rows * 8 }, (_, i) => {
    const block = i >> 3;
    return [...moved(grey(block % columns, Math.floor(block / columns)), gauss() * noise), 8] as [
      ...Lab,
      number,
    ];
  });
  const { cells, lab } = labCells(pixels);
  return judgeChroma({ ...picture.tally, cells }, lab, AS_LAB, picture.size);
}

describe('the tone beneath noise', () => {
  // nothing of the picture is darker than L* 30: what is, noise has brought there
  const few = (tone: number) => (x: number, y: number) => [30 + ((x * 7 + y * 31) % 50), 0, tone] as Lab;

  it('is not what noise leaves where few pixels are', () => {
    const { tone, facts } = noisy(80, 80, 5, few(0));
    assert.ok(facts.zones[0].L < 28, 'there are such pixels');
    assert.ok(tone < 0.5, `${tone}`);
    for (const { a, b } of facts.zones) assert.ok(Math.hypot(a, b) < 0.5, `${a}, ${b}`);
  });

  it('is found where there is one, however faint', () => {
    for (const wanted of [1.2, 2, 8]) {
      const { tone } = noisy(80, 80, 5, few(wanted));
      assert.ok(Math.abs(tone - wanted) < 0.35, `${tone}, not ${wanted}`);
    }
  });

  it('is found where it changes with lightness', () => {
    const { facts } = noisy(80, 80, 5, (x, y) => {
      const L = 30 + ((x * 7 + y * 31) % 50);
      return [L, 0, (L - 55) / 8];
    });
    const [dark, light] = [facts.zones.find(({ L }) => L > 31)!, facts.zones.findLast(({ L }) => L < 79)!];
    assert.ok(dark.b < -1.5 && light.b > 1.5, `${dark.b}, ${light.b}`);
  });

  it('weighs cut blocks by what averages out in them', () => {
    const { tally } = labPicture(4, 1, () => [50, 0, 0]);
    tally.blocks.count.set([64, 16, 4, 0]);
    const strays = { distance: Float32Array.of(4, 4, 4, 0), zone: new Uint8Array(4), limit: 2, noise: 0.5 };
    steady(strays, tally.blocks);
    assert.deepEqual([...strays.distance], [4, 2, 1, 0]);
  });
});
