import assert from 'node:assert/strict';
import { apply } from '../../src/colour/matrix';
import { spectralView, toD50, whiteOf } from '../../src/colour/spectra';
import type { LightId } from '../../src/shared/target';

// CIE 015:2018, Tables T.1 to T.12 as published to five decimals (fluorescent lamps and LEDs here to four or five)
const PUBLISHED: Record<LightId, [number, number]> = {
  A: [0.44758, 0.40745],
  D50: [0.34567, 0.35851],
  D65: [0.31272, 0.32903],
  FL2: [0.3721, 0.3751],
  FL11: [0.3805, 0.3769],
  'LED-B1': [0.456, 0.4078],
  'LED-B2': [0.4357, 0.4012],
  'LED-B3': [0.3756, 0.3723],
  'LED-B4': [0.3422, 0.3502],
  'LED-B5': [0.3118, 0.3236],
};

describe('spectra', () => {
  it('the lights have the chromaticities that the CIE publishes, to 0.00005', () => {
    for (const [light, [x, y]] of Object.entries(PUBLISHED)) {
      const [X, Y, Z] = whiteOf(light as LightId);
      const sum = X + Y + Z;
      assert.ok(Math.abs(X / sum - x) <= 0.000051, `${light} x ${X / sum}`);
      assert.ok(Math.abs(Y / sum - y) <= 0.000051, `${light} y ${Y / sum}`);
      assert.ok(Math.abs(Y - 100) < 1e-9);
    }
  });

  it('a perfect diffuser is L* 100 and neutral under every light, at 5 and at 10 nm', () => {
    for (const light of Object.keys(PUBLISHED) as LightId[])
      for (const sampling of [
        { from: 380, step: 5, count: 81 },
        { from: 400, step: 10, count: 31 },
        { from: 380, step: 10, count: 36 },
      ]) {
        const lab = spectralView(light, sampling).lab(
          new Float64Array(sampling.count).fill(1),
          new Float64Array(3),
        );
        assert.ok(Math.abs(lab[0] - 100) < 1e-6 && Math.hypot(lab[1], lab[2]) < 0.005, `${light} ${lab}`);
      }
  });

  it('10 nm give what 5 nm give for a smooth spectrum, also under lamps with lines', () => {
    const curve = (nm: number) => 0.4 + 0.3 * Math.sin((nm - 380) / 40);
    const fine = { from: 380, step: 5, count: 81 };
    const coarse = { from: 380, step: 10, count: 41 };
    const sampled = ({ from, step, count }: typeof fine) =>
      Float64Array.from({ length: count }, (_, i) => curve(from + i * step));
    for (const light of Object.keys(PUBLISHED) as LightId[]) {
      const one = spectralView(light, fine).lab(sampled(fine), new Float64Array(3));
      const other = spectralView(light, coarse).lab(sampled(coarse), new Float64Array(3));
      assert.ok(Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]) < 0.02, `${light}`);
    }
  });

  it('CAT16 to D50 takes each light to the white of ICC.1', () => {
    const white = apply(toD50('FL11'), whiteOf('FL11'), new Float64Array(3));
    [96.42, 100, 82.49].forEach((value, i) => {
      assert.ok(Math.abs(white[i] - value) < 1e-9);
    });
  });
});
