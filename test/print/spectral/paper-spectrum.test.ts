import assert from 'node:assert/strict';
import { papers } from '../../../src/print/papers';
import { brightenerExcess } from '../../../src/print/spectral/brightener';
import {
  brightenerShift,
  paperSpectrum,
  paperWhite,
  printRadiance,
} from '../../../src/print/spectral/paper-spectrum';

const paper = (id: string) => papers.find(p => p.id === id)!;

describe('papers as spectra', () => {
  it('have their own Lab under D50, and reflect what a white paper can', () => {
    for (const p of papers) {
      paperWhite(p, 'D50').forEach((value, i) => {
        assert.ok(Math.abs(value - p.white[i]) < 1e-4, p.id);
      });
      assert.ok(
        paperSpectrum(p).base.every((value, i) => value > (i < 4 ? 0.1 : 0.6) && value < 0.95),
        `${p.id} ${paperSpectrum(p).base}`,
      );
    }
  });

  it('a brightened one is bluer by daylight with more ultraviolet and loses its blue under a white LED', () => {
    // direction: ISO 13655 M1 against M2, and the factors of a measured brightened white; amounts by its class
    const bright = paper('uncoated-bright');
    assert.ok(brightenerShift(bright, 'D65').b < -1.5);
    assert.ok(brightenerShift(bright, 'LED-B3').b > 5);
    assert.ok(brightenerShift(bright, 'A').b > 0.5);
    // its brightener kept as under D50, it would stay as blue under the lamp
    assert.ok(paperWhite(bright, 'LED-B3', 'D50')[2] < -8);
  });

  it('one without brightener hardly moves', () => {
    for (const light of ['D65', 'A', 'FL2', 'LED-B1'] as const) {
      const { L, a, b } = brightenerShift(paper('grade-3-coated'), light);
      assert.ok(Math.hypot(L, a, b) < 0.1);
    }
  });

  it('the brightener fades beneath a grey with the ultraviolet that reaches it and its own way out', () => {
    const bright = paperSpectrum(paper('uncoated-bright'));
    const excess = brightenerExcess('D50');
    const out = new Float64Array(31);
    printRadiance(bright, excess, new Float64Array(31).fill(0.25), out);
    const glow = out[4] - 0.25 * bright.base[4];
    assert.ok(Math.abs(glow / (bright.amount * excess[4]) - 0.25) < 1e-9);
  });

  it('one too dark for the brightener it is said to hold is taken to hold less', () => {
    const dark = { white: [60, 0, 30], brightener: 'high', surface: 'measured' } as const;
    assert.ok(paperSpectrum(dark).amount < 0.5);
    paperWhite(dark, 'D50').forEach((value, i) => {
      assert.ok(Math.abs(value - dark.white[i]) < 1e-4);
    });
  });
});
