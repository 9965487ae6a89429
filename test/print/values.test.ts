import assert from 'node:assert/strict';
import { sampledValue } from '../../src/print/values';

describe('stated values', () => {
  it('become a picture of one zone', () => {
    const { space, zones, histogram } = sampledValue({ space: 'grey', values: [0.5] });
    assert.equal(space, 'grey');
    assert.equal(histogram, null);
    assert.deepEqual(zones[0].clusters[0].points, [[0.5]]);
    // IEC 61966-2-1: 0.5 encoded is 21.4 % light, L* 53.39
    assert.ok(Math.abs(zones[0].L - 53.39) < 0.01);
  });
  it('out of range are named', () => {
    assert.throws(() => sampledValue({ space: 'cmyk', values: [0, 0, 1.2, 0] }), /value 3 of cmyk is 1.2/);
    assert.throws(() => sampledValue({ space: 'rgb', values: [0, Number.NaN, 0] }), /value 2 of rgb is NaN/);
  });
  it('in a wrong number are refused', () =>
    assert.throws(() => sampledValue({ space: 'cmyk', values: [0, 0, 0] }), /cmyk needs 4 values, not 3/));
});
