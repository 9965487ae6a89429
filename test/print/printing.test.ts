import assert from 'node:assert/strict';
import { paperOf } from '../../src/print/papers';
import { genericPrinting } from '../../src/print/printing';
import { processes } from '../../src/print/processes';

describe('a process on a paper', () => {
  it('has one white and one colour of bare paper, under D50 and under any light', () => {
    for (const process of processes) {
      const printing = genericPrinting(process, paperOf('gloss-coated-bright'));
      const models = [printing.daylight, printing.under('A').model, printing.under('LED-B3').model];
      for (const model of models) {
        const lab = new Float64Array(3);
        model.lab(model.dimensions === 4 ? [0, 0, 0, 0] : [1, 1, 1], null, lab);
        model.white.forEach((value, i) => {
          assert.ok(Math.abs(lab[i] - value) < 0.1, `${process.id}: ${lab} is not ${model.white}`);
        });
      }
    }
  });

  it('inks change by a shift, dyes by a model of their own', () => {
    for (const process of processes) {
      const { shift } = genericPrinting(process, paperOf(process.paper)).under('A');
      assert.equal(shift === null, process.model.kind === 'dyes');
    }
  });
});
