import assert from 'node:assert/strict';
import { erfc, gaussLegendre, normalCdf } from '../../src/print/normal';

describe('normal distribution', () => {
  // NIST Digital Library of Mathematical Functions and every statistics table: quantiles of the standard normal
  for (const [x, p] of [
    [0, 0.5],
    [1, 0.8413447460685429],
    [1.959963984540054, 0.975],
    [-2.5758293035489, 0.005],
    [-6, 9.865876450376981e-10],
  ] as const)
    it(`is ${p} at ${x}`, () => assert.ok(Math.abs(normalCdf(x) - p) < 2e-7 * Math.max(p, 1e-3)));

  it('has the published complementary error function', () => {
    // Abramowitz and Stegun, table 7.1: erf 0.5 = 0.5204998778, erf 1.5 = 0.9661051465
    assert.ok(Math.abs(1 - erfc(0.5) - 0.5204998778) < 1e-7);
    assert.ok(Math.abs(1 - erfc(1.5) - 0.9661051465) < 1e-7);
  });
});

describe('Gauss-Legendre quadrature', () => {
  it('has the published nodes and weights', () => {
    // Abramowitz and Stegun, table 25.4, n = 5
    const { x, w } = gaussLegendre(5);
    const positive = [...x].map((node, i) => [node, w[i]]).filter(([node]) => node > 1e-9);
    const expected = [
      [0.906179845938664, 0.236926885056189],
      [0.538469310105683, 0.478628670499366],
    ];
    positive.forEach(([node, weight], i) => {
      assert.ok(Math.abs(node - expected[i][0]) < 1e-14);
      assert.ok(Math.abs(weight - expected[i][1]) < 1e-14);
    });
  });

  it('integrates a polynomial of degree 2n - 1 exactly', () => {
    const { x, w } = gaussLegendre(32);
    const sum = [...x].reduce((total, node, i) => total + w[i] * node ** 62, 0);
    assert.ok(Math.abs(sum - 2 / 63) < 1e-14);
  });
});
