import assert from 'node:assert/strict';
import { spectralView } from '../../../src/colour/spectra';
import { neutralTarget, STRAY } from '../../../src/print/spectral/neutral-target';
import { GRID } from '../../../src/print/spectral/sampling';

describe('the measured target on chromogenic paper', () => {
  it('has a white of about 91.9, 1.7, -1.5 (published with it) and 22 greys down to the stray light', () => {
    const { paper, greys } = neutralTarget();
    const lab = spectralView('D50', GRID).lab(paper, new Float64Array(3));
    [91.9, 1.7, -1.5].forEach((value, i) => {
      assert.ok(Math.abs(lab[i] - value) < 0.2, `${lab}`);
    });
    assert.equal(greys.length, 22);
    assert.ok(Math.min(...greys[21]) > STRAY - 0.005 && Math.min(...greys[21]) < STRAY + 0.01);
  });
});
