import assert from 'node:assert/strict';
import { spectralView } from '../../../src/colour/spectra';
import { parseTable } from '../../../src/colour/table';
import tonerText from '../../../src/print/data/liquid_toner_near_neutral_measured.csv';
import { brightenerExcess } from '../../../src/print/spectral/brightener';
import { printRadiance } from '../../../src/print/spectral/paper-spectrum';
import { GRID } from '../../../src/print/spectral/sampling';
import { tonerPaper, tonerScale, tonerTransmittance } from '../../../src/print/spectral/toner';

describe('greys of liquid toner', () => {
  it('the published spectra have the published Lab (D50, 2 degrees), to 0.01', () => {
    const table = parseTable(tonerText);
    const view = spectralView('D50', { from: 380, step: 10, count: 36 });
    const bands = Array.from({ length: 36 }, (_, i) => table.column(`R${380 + 10 * i}`));
    const published = ['L', 'a', 'b'].map(name => table.column(name));
    for (let row = 0; row < table.rows; row++) {
      const lab = view.lab(
        Float64Array.from(bands, band => band[row]),
        new Float64Array(3),
      );
      published.forEach((column, i) => {
        assert.ok(Math.abs(lab[i] - column[row]) < 0.01, `row ${row}: ${lab}`);
      });
    }
  });

  it('have three states of five greys on their paper', () => {
    for (const state of ['linear', 'tvi-calibrated', 'grey-tuned'] as const) {
      const { paper, greys } = tonerScale(state);
      assert.equal(greys.length, 5);
      assert.ok(paper.lab[0] > 93 && paper.lab[2] < -6);
      assert.deepEqual(paper.inks, [0, 0, 0, 0]);
      for (let i = 1; i < 5; i++) assert.ok(greys[i].lab[0] < greys[i - 1].lab[0]);
    }
  });

  it('come apart into paper, brightener and toner, and together again', () => {
    const scale = tonerScale('tvi-calibrated');
    const paper = tonerPaper(scale);
    for (const grey of scale.greys) {
      const through = tonerTransmittance(paper, grey);
      assert.ok(through.every(value => value > 0 && value <= 1));
      const total = printRadiance(paper, brightenerExcess('D50'), through, new Float64Array(GRID.count));
      total.forEach((value, i) => {
        assert.ok(Math.abs(value - grey.radiance[i]) < 1e-3);
      });
    }
  });
});
