import assert from 'node:assert/strict';
import { spectralView } from '../../../src/colour/spectra';
import { papers } from '../../../src/print/papers';
import { inkLightShift } from '../../../src/print/spectral/ink-light';
import { GRID } from '../../../src/print/spectral/sampling';
import { tonerScale } from '../../../src/print/spectral/toner';
import type { LightId } from '../../../src/shared/target';

const paper = (id: string) => papers.find(p => p.id === id)!;
const shift = (id: string, light: LightId, borrowed = true, ultraviolet?: LightId) =>
  inkLightShift({ paper: paper(id), light, borrowed, ultraviolet });
const at = (of: ReturnType<typeof shift>, L: number, coloured: number) => {
  const out = new Float64Array(3);
  of.shift(L, coloured, out);
  return out;
};

describe('inks under another light', () => {
  it('do not change under D50', () => {
    const none = shift('gloss-coated-bright', 'D50');
    assert.deepEqual(Array.from(at(none, 50, 1)), [0, 0, 0]);
    assert.deepEqual(none.spread(50, 1), { a: 0, b: 0 });
  });

  it('black alone does not change on a paper without brightener', () => {
    for (const light of ['A', 'FL11', 'LED-B1'] as const)
      assert.ok(Math.hypot(...at(shift('grade-3-coated', light), 50, 0)) < 0.05);
  });

  it('measured greys move as their own spectra do, under lights that do not wake the brightener', () => {
    // the press's own paper and spectra; the brightener kept as under D50, since its change was not measured
    const { greys, paper: own } = tonerScale('tvi-calibrated');
    for (const light of ['A', 'FL11', 'LED-B3'] as const) {
      const of = inkLightShift({
        paper: { white: own.lab, brightener: 'moderate', surface: 'coated' },
        light,
        ultraviolet: 'D50',
        borrowed: false,
      });
      const paperMove = at(of, own.lab[0], 0);
      for (const grey of greys) {
        const [before, after] = (['D50', light] as LightId[]).map(id =>
          spectralView(id, GRID).lab(grey.radiance, new Float64Array(3)),
        );
        const predicted = at(of, grey.lab[0], 1);
        const off = Math.hypot(after[1] - before[1] - predicted[1], after[2] - before[2] - predicted[2]);
        assert.ok(
          off < 0.5 + Math.hypot(paperMove[1], paperMove[2]),
          `${light} L ${grey.lab[0]}: off by ${off}`,
        );
      }
    }
  });

  it('coloured greys are less sure than black ones, borrowed spectra as unsure as the shift is long', () => {
    const borrowed = shift('grade-3-coated', 'A');
    const moved = at(borrowed, 50, 1);
    assert.ok(Math.abs(borrowed.spread(50, 1).a / Math.abs(moved[1]) - 1) < 0.05);
    assert.ok(shift('grade-3-coated', 'A', false).spread(50, 1).a < 0.4 * borrowed.spread(50, 1).a);
    assert.ok(borrowed.spread(50, 0).a < 0.2);
  });

  it('beneath a grey the brightener’s part fades, and on bare paper it is the paper’s', () => {
    const led = shift('uncoated-bright', 'LED-B3');
    const bare = at(led, 93.5, 0)[2];
    assert.ok(Math.abs(led.white[2] - -10 - bare) < 0.2);
    assert.ok(at(led, 50, 0)[2] < 0.7 * bare && at(led, 50, 0)[2] > 0.3 * bare);
  });

  it('says what is borrowed', () => {
    assert.ok(shift('gloss-coated', 'A').ground[0].startsWith('a guess:'));
    assert.ok(!shift('gloss-coated', 'A', false).ground[0].startsWith('a guess:'));
    assert.deepEqual(shift('gloss-coated', 'D50').ground, []);
  });
});
