import assert from 'node:assert/strict';
import { pressOf } from '../../src/print/press';
import { asReference } from '../../src/print/reference';

const { daylight, reference } = pressOf({
  process: 'offset-coated',
  paper: 'gloss-coated',
  light: 'D50',
  inkLimit: null,
});
const none = { a: 0, b: 0 };
const cluster = (mean: number[], passed = none) => ({
  weight: 1,
  mean,
  points: [mean],
  passed,
  conversion: none,
});

describe('reference encoding', () => {
  it('is the black that prints the same lightness', () => {
    const lab = new Float64Array(3);
    for (const L of [90, 60, 30, 16]) {
      daylight.lab(reference.device(L), null, lab);
      assert.ok(Math.abs(lab[0] - L) < 0.15, `${L}: ${lab[0]}`);
    }
  });
  it('is solid black where black cannot be dark enough, and paper where nothing is lighter', () => {
    assert.deepEqual(reference.device(5), [0, 0, 0, 1]);
    assert.deepEqual(reference.device(99), [0, 0, 0, 0]);
    // TR 006: black alone is L* 14.95
    assert.ok(Math.abs(reference.black - 14.95) < 0.01);
  });
  it('leaves a picture that is in it as it is', () => {
    const black = cluster([0, 0, 0, 0.42]);
    assert.equal(asReference(reference, 4, [black], 60)[0], black);
    const grey = cluster([0.3, 0.3, 0.3]);
    assert.equal(asReference(reference, 3, [grey], 60)[0], grey);
  });
  it('replaces a grey that lacks one of the coloured inks', () => {
    for (const inks of [
      [0, 0.3, 0.3, 0.2],
      [0.3, 0, 0, 0.2],
    ])
      assert.equal(asReference(reference, 4, [cluster(inks)], 60)[0].mean[1], 0);
    assert.equal(asReference(reference, 4, [cluster([0, 0.3, 0.3, 0.2])], 60)[0].mean[2], 0);
  });
  it('replaces coloured inks, and inks with a tint that a conversion passes on', () => {
    assert.equal(asReference(reference, 4, [cluster([0.4, 0.3, 0.3, 0])], 60)[0].mean[0], 0);
    assert.deepEqual(
      asReference(reference, 4, [cluster([0, 0, 0, 0.4], { a: 3, b: 0 })], 60)[0].passed,
      none,
    );
  });
});
