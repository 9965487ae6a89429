import assert from 'node:assert/strict';
import { judgeChroma } from '../../../src/picture/judge/chroma';
import { AS_LAB, labPicture } from './cells';

const judge = (picture: ReturnType<typeof labPicture>) =>
  judgeChroma(picture.tally, picture.lab, AS_LAB, picture.size);
const near = (found: number, wanted: number, within: number) =>
  assert.ok(Math.abs(found - wanted) <= within, `${found}, not ${wanted}`);

/** A ramp of greys with a few blocks of another colour. */
const marked = (colour: [number, number], blocks: number) =>
  labPicture(40, 40, (x, y) => {
    const i = y * 40 + x;
    return i < blocks ? [50, ...colour] : [(i * 7) % 101, 0, 0];
  });

describe('chroma', () => {
  it('of a neutral picture is nothing', () => {
    const { facts, tone } = judge(marked([0, 0], 0));
    assert.deepEqual(
      [facts.max, facts.mean, facts.share, facts.hue, facts.places, facts.maxBlock, facts.maxPixel, tone],
      [0, 0, 0, null, [], 0, 0, 0],
    );
    near(
      facts.zones.reduce((sum, zone) => sum + zone.weight, 0),
      1,
      1e-9,
    );
  });

  it('of a mark is its distance, its share and its place', () => {
    const { facts } = judge(marked([3, 4], 16));
    near(facts.max, 5, 1e-5);
    near(facts.mean, 0.05, 1e-6);
    near(facts.share, 0.01, 1e-9);
    // half of the pixels of its lightness are the mark's, so the tone there leans a little towards it
    near(facts.maxBlock, 5, 0.3);
    near(facts.maxPixel, 5, 0.3);
    assert.deepEqual(
      facts.places.map(({ max, ...box }) => box),
      [{ x: 0, y: 0, width: 128, height: 8 }],
    );
    near(facts.places[0].max, 5, 0.3);
  });

  it('of a tone is in the zones, not in the residual', () => {
    const { facts, tone } = judge(labPicture(40, 40, (x, y) => [(y * 40 + x) % 101, -1, 10]));
    near(tone, Math.hypot(1, 10), 0.15);
    near(facts.hue!, 95.7, 0.1);
    assert.equal(facts.share, 0);
    for (const zone of facts.zones) {
      near(zone.a, -1, 0.13);
      near(zone.b, 10, 0.13);
      assert.ok(zone.residual < 0.2);
    }
  });

  it('counts strong and clear colour apart', () => {
    const { strong, clear, smooth } = judge(
      labPicture(40, 40, (x, y) => {
        const i = y * 40 + x;
        return [(i * 7) % 101, i < 32 ? 20 : i < 96 ? 8 : i < 160 ? 4 : 0, 0];
      }),
    );
    near(strong, 0.02, 1e-9);
    near(clear, 0.06, 1e-9);
    near(smooth, 0.1, 1e-9);
  });

  it('too faint to be seen is not looked for block by block', () => {
    const { facts } = judge(labPicture(40, 40, (x, y) => [(y * 40 + x) % 101, x % 2 ? 0.5 : -0.5, 0]));
    assert.equal(facts.share, 0);
    assert.ok(facts.maxBlock <= 1 && facts.maxPixel <= 1);
  });
});
