import assert from 'node:assert/strict';
import { whiteOf } from '../../src/colour/spectra';
import { lights } from '../../src/print/lights';

describe('viewing lights', () => {
  it('are ten CIE illuminants, each once, with a spectrum', () => {
    assert.equal(new Set(lights.map(({ id }) => id)).size, 10);
    for (const { id } of lights) assert.ok(Math.abs(whiteOf(id)[1] - 100) < 1e-9, id);
  });

  it('the LEDs have the colour temperatures of their names (CIE 015:2018: 2733, 2998, 4103, 5109, 6598 K)', () => {
    for (const { id, name } of lights) {
      const stated = /about (\d+) K/.exec(name);
      if (!stated) continue;
      // McCamy 1992
      const [X, Y, Z] = whiteOf(id);
      const n = (X / (X + Y + Z) - 0.332) / (0.1858 - Y / (X + Y + Z));
      const kelvin = 449 * n ** 3 + 3525 * n ** 2 + 6823.3 * n + 5520.33;
      assert.ok(Math.abs(kelvin / Number(stated[1]) - 1) < 0.025, `${id}: ${kelvin}`);
    }
  });
});
