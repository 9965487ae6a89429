import assert from 'node:assert/strict';
import { measuredPress } from '../../../src/colour/press';
import { inkModel } from '../../../src/print/inks/model';
import { tonerOffset } from '../../../src/print/inks/toner-offset';
import { tonerScale } from '../../../src/print/spectral/toner';

const table = measuredPress('TR006');
const none = { a: 0, b: 0 };
const still = { tone: { order: 0, page: 0 }, blackShade: none, colouredGrey: none };

describe('departure of liquid toner', () => {
  it('table and departure together give the published a*, b* of the measured greys (A. Beltrami 2022), within 0.5', () => {
    const { paper, greys } = tonerScale('tvi-calibrated');
    const model = inkModel({
      table,
      paper: paper.lab,
      scatter: still,
      offset: tonerOffset(table),
      ground: [],
    });
    const lab = new Float64Array(3);
    for (const grey of greys) {
      model.lab(grey.inks, null, lab);
      const off = Math.hypot(lab[1] - grey.lab[1], lab[2] - grey.lab[2]);
      assert.ok(off < 0.5, `${grey.inks}: ${lab}, measured ${grey.lab}`);
      assert.ok(Math.abs(lab[0] - grey.lab[0]) < 3);
    }
  });

  it('is a crossover: redder lights, greener shadows; nothing on paper', () => {
    const of = tonerOffset(table);
    assert.ok(of(80).a > 0.5 && of(35).a < -0.5);
    assert.deepEqual(of(95), none);
    assert.deepEqual(of(5), of(20));
  });
});
