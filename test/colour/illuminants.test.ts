import assert from 'node:assert/strict';
import { distribution, distributionWithUltraviolet, observer } from '../../src/colour/illuminants';

describe('CIE tables', () => {
  it('peak where the standard observer does (CIE 018: y 1.0000 at 555 nm, z 1.7826 at 445 nm)', () => {
    assert.ok(Math.abs(observer[1][(555 - 380) / 5] - 1) < 1e-4);
    assert.ok(Math.abs(observer[2][(445 - 380) / 5] - 1.7826) < 1e-3);
  });

  it('D50, D65 and A are 100 at 560 nm (CIE 015:2018)', () => {
    for (const light of ['D50', 'D65', 'A'] as const) assert.equal(distribution(light)[(560 - 380) / 5], 100);
  });

  it('agree with the tables that begin in the ultraviolet, where those are published', () => {
    for (const light of ['D50', 'D65', 'A'] as const) {
      const whole = distributionWithUltraviolet(light);
      assert.equal(whole.length, 97);
      distribution(light).forEach((value, i) => {
        assert.ok(Math.abs(whole[i + 16] - value) < 0.001 * Math.max(1, value), `${light} ${380 + i * 5} nm`);
      });
      assert.ok(whole[(360 - 300) / 5] > 0);
    }
  });

  it('a white LED is dark in the ultraviolet', () => {
    assert.equal(distributionWithUltraviolet('LED-B3')[(360 - 300) / 5], 0);
  });
});
