import assert from 'node:assert/strict';
import {
  bandsOf,
  besides,
  directionOfHue,
  hueOf,
  meanBands,
  obviousShare,
  probabilityOf,
  probabilityTowards,
  visibleShare,
} from '../../src/print/bands';

const at = (a: number, b: number, sd: number) => ({ mean: { a, b }, aa: sd ** 2, ab: 0, bb: sd ** 2 });
const sum = (bands: object) => Object.values(bands).reduce((total, share) => total + share, 0);

describe('bands', () => {
  it('add up to 1', () => {
    for (const distribution of [at(0, 0, 0.1), at(3, -2, 1.5), at(9, 9, 4), at(0, 0, 30)])
      assert.ok(Math.abs(sum(bandsOf(distribution)) - 1) < 1e-12);
  });
  it('put a sure tint into its band', () => {
    const names = [0.5, 1.5, 3, 5, 9].map(a => {
      const [name] = Object.entries(bandsOf(at(a, 0, 0.01))).sort((x, y) => y[1] - x[1])[0];
      return name;
    });
    assert.deepEqual(names, ['neutral', 'faint', 'visible', 'obvious', 'heavy']);
  });
  it('of opposite tints do not cancel', () => {
    const opposite = meanBands([
      { weight: 1, bands: bandsOf(at(3, 0, 0.2)) },
      { weight: 3, bands: bandsOf(at(-3, 0, 0.2)) },
    ]);
    assert.ok(visibleShare(opposite) > 0.99);
  });
});

describe('shares of the bands', () => {
  it('count from where a tint is seen, and from where it is obvious', () => {
    const bands = { neutral: 0.1, faint: 0.2, visible: 0.3, obvious: 0.25, heavy: 0.15 };
    assert.ok(Math.abs(visibleShare(bands) - 0.7) < 1e-12);
    assert.ok(Math.abs(obviousShare(bands) - 0.4) < 1e-12);
  });
});

describe('direction', () => {
  it('has a name on either side, all round', () => {
    assert.deepEqual(besides('warm'), ['pinkish', 'greenish']);
    assert.deepEqual(besides('pinkish'), ['bluish', 'warm']);
  });
  it('has the probability of its own hues: half on a boundary, all of them together what is no less than 1', () => {
    // hue 20 degrees parts pinkish from warm
    const [a, b] = [5 * Math.cos(Math.PI / 9), 5 * Math.sin(Math.PI / 9)];
    for (const name of ['pinkish', 'warm'] as const)
      assert.ok(Math.abs(probabilityOf(at(a, b, 0.3), name) - 0.5) < 1e-4);
    assert.ok(probabilityOf(at(a, b, 0.3), 'bluish') < 1e-9);
    const wide = at(0.5, -1, 2);
    const all = (['warm', 'greenish', 'bluish', 'pinkish'] as const).reduce(
      (total, name) => total + probabilityOf(wide, name),
      0,
    );
    assert.ok(Math.abs(all - (1 - bandsOf(wide).neutral)) < 1e-3, `${all}`);
    // hues of the same probability all round: as wide as the name
    assert.ok(Math.abs(probabilityOf(at(0, 0, 50), 'bluish') - 85 / 360) < 1e-3);
  });

  it('is named by the ranges of hue', () => {
    const names: [number, string][] = [
      [19.9, 'pinkish'],
      [20, 'warm'],
      [109.9, 'warm'],
      [110, 'greenish'],
      [214.9, 'greenish'],
      [215, 'bluish'],
      [299.9, 'bluish'],
      [300, 'pinkish'],
      [359, 'pinkish'],
    ];
    for (const [hue, name] of names) assert.equal(directionOfHue(hue), name);
    assert.equal(hueOf(0, -1), 270);
  });
  it('is sure for a strong narrow tint and unlikely for a weak wide one', () => {
    assert.ok(probabilityTowards(at(5, 5, 0.5), 45) > 0.99);
    assert.ok(probabilityTowards(at(0.3, 0.3, 1.8), 45) < 0.4);
  });
});
