import assert from 'node:assert/strict';
import { spectralView } from '../../../src/colour/spectra';
import { brightenerExcess } from '../../../src/print/spectral/brightener';
import { colouredGrey, flatBlack, greyOnPaper } from '../../../src/print/spectral/grey-spectra';
import { paperSpectrum, printRadiance } from '../../../src/print/spectral/paper-spectrum';
import { GRID } from '../../../src/print/spectral/sampling';
import { tonerPaper, tonerScale, tonerTransmittance } from '../../../src/print/spectral/toner';

const clear = () => new Float64Array(GRID.count);

describe('spectra of greys', () => {
  it('black lets all wavelengths through alike', () => {
    const through = flatBlack(1, clear());
    assert.ok(through.every(value => value === Math.exp(-1)));
  });

  it('a coloured grey passes through the measured steps', () => {
    const scale = tonerScale('tvi-calibrated');
    for (const grey of scale.greys) {
      const measured = tonerTransmittance(tonerPaper(scale), grey);
      const through = colouredGrey(-Math.log(measured[15]), clear());
      through.forEach((value, i) => {
        assert.ok(Math.abs(value - measured[i]) < 1e-9);
      });
    }
    assert.ok(colouredGrey(0, clear()).every(value => value === 1));
  });

  it('is found by the lightness it prints, beyond the last step too', () => {
    const paper = paperSpectrum({ white: [95, 1.5, -6], brightener: 'moderate', surface: 'coated' });
    for (const ink of [flatBlack, colouredGrey])
      for (const L of [90, 60, 30, 15, 5]) {
        const spectrum = printRadiance(paper, brightenerExcess('D50'), greyOnPaper(ink, paper, L), clear());
        const lab = spectralView('D50', GRID).lab(spectrum, new Float64Array(3));
        assert.ok(Math.abs(lab[0] - L) < 0.01, `${L}: ${lab}`);
      }
  });
});
