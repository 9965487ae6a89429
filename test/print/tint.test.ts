import assert from 'node:assert/strict';
import { type TintDistribution, towards, withinDisc } from '../../src/print/tint';
import { normals } from './press-sets';

const tint = (a: number, b: number, sdA: number, sdB: number, corr = 0): TintDistribution => ({
  mean: { a, b },
  aa: sdA ** 2,
  ab: corr * sdA * sdB,
  bb: sdB ** 2,
});

describe('tint within a disc around neutral', () => {
  it('is the Rayleigh distribution for a round, centred one (closed form)', () => {
    for (const sd of [0.05, 0.3, 1, 2.5, 20])
      for (const radius of [1, 2, 4, 7]) {
        const expected = 1 - Math.exp(-(radius ** 2) / (2 * sd ** 2));
        assert.ok(Math.abs(withinDisc(tint(0, 0, sd, sd), radius) - expected) < 1.5e-4, `${sd} ${radius}`);
      }
  });

  it('is the published offset-circle probability', () => {
    // 1 - Q1(1, 1), Marcum Q function tabulated as Q1(1, 1) = 0.73288
    assert.ok(Math.abs(withinDisc(tint(1, 0, 1, 1), 1) - 0.26712) < 1e-4);
  });

  it('does not see which way the axes lie', () => {
    const whole = withinDisc(tint(0.8, -1.1, 1.5, 0.4, 0.6), 2);
    const turned = withinDisc(tint(-0.8, 1.1, 1.5, 0.4, 0.6), 2);
    const mirrored = withinDisc(tint(-1.1, 0.8, 0.4, 1.5, 0.6), 2);
    assert.ok(Math.abs(whole - turned) < 1e-5 && Math.abs(whole - mirrored) < 1e-5);
  });

  it('is 0 or 1 where nothing scatters', () => {
    assert.equal(withinDisc(tint(0.5, 0.5, 0, 0), 1), 1);
    assert.equal(withinDisc(tint(3, 0, 0, 0), 1), 0);
    assert.ok(Math.abs(withinDisc(tint(1, 0, 0, 0), 1) - 0.5) < 1e-3);
  });
});

describe('tint by Monte Carlo', () => {
  const cases: [string, TintDistribution][] = [
    ['round, off centre', tint(1.5, 1, 1.2, 1.2)],
    ['thin and slanted', tint(1, -2, 2.5, 0.8, 0.9)],
    ['far and narrow', tint(5.8, 5.1, 0.3, 0.2, -0.4)],
    ['wide', tint(0.3, -0.2, 3, 2.2, 0.2)],
    ['nearly a line', tint(0.5, 0.4, 1.5, 1.5, 0.999)],
  ];
  const draws = 200_000;
  for (const [name, distribution] of cases)
    it(`agrees for one that is ${name}`, () => {
      const next = normals(7);
      const { mean, aa, ab, bb } = distribution;
      const l11 = Math.sqrt(aa);
      const l21 = ab / l11;
      const l22 = Math.sqrt(Math.max(0, bb - l21 ** 2));
      const hue = Math.atan2(mean.b, mean.a);
      const within = [0, 0, 0, 0];
      let along = 0;
      for (let i = 0; i < draws; i++) {
        const u = next();
        const v = next();
        const a = mean.a + l11 * u;
        const b = mean.b + l21 * u + l22 * v;
        const chroma = Math.hypot(a, b);
        [1, 2, 4, 7].forEach((radius, band) => {
          if (chroma < radius) within[band]++;
        });
        const away = Math.abs(Math.atan2(Math.sin(Math.atan2(b, a) - hue), Math.cos(Math.atan2(b, a) - hue)));
        if (chroma >= 1 && away <= Math.PI / 4) along++;
      }
      // four standard errors of a share at 200,000 draws
      const close = (share: number, count: number) =>
        assert.ok(Math.abs(share - count / draws) < 0.0045, `${share} against ${count / draws}`);
      for (const [band, radius] of [1, 2, 4, 7].entries())
        close(withinDisc(distribution, radius), within[band]);
      close(towards(distribution, hue, 1), along);
    });
});

describe('tint towards a hue', () => {
  it('is a quarter of what is outside the disc if nothing leans', () => {
    const outside = Math.exp(-1 / (2 * 1.7 ** 2));
    for (const hue of [0, 1, 3, -2])
      assert.ok(Math.abs(towards(tint(0, 0, 1.7, 1.7), hue, 1) - outside / 4) < 1e-5);
  });
  it('is nothing on the other side of a narrow one', () =>
    assert.ok(towards(tint(6, 0, 0.2, 0.2), Math.PI, 1) < 1e-9));
  it('adds up over the four quarters to all outside the disc', () => {
    const distribution = tint(1.2, -0.7, 1.4, 2.1, -0.3);
    const sum = [0, 1, 2, 3].reduce(
      (total, q) => total + towards(distribution, 0.3 + (q * Math.PI) / 2, 1),
      0,
    );
    assert.ok(Math.abs(sum - (1 - withinDisc(distribution, 1))) < 1e-4);
  });
});
