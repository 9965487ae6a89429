import assert from 'node:assert/strict';
import { defaultTarget } from '../../src/print';
import { pressOf } from '../../src/print/press';
import { forecastAs, greyEncodings, restated } from '../../src/print/restated';
import { samplesOf } from '../../src/print/samples';
import { greyScale, pictureFacts } from './facts';

const picture = samplesOf(greyScale())!;
const coated = pressOf(defaultTarget('offset-coated'));

describe('a picture in another encoding', () => {
  it('keeps lightness, weights and histogram', () => {
    for (const encoding of greyEncodings) {
      const other = restated(encoding, picture, coated);
      assert.deepEqual(
        other.zones.map(z => [z.L, z.weight]),
        picture.zones.map(z => [z.L, z.weight]),
      );
      assert.equal(other.histogram, picture.histogram);
    }
  });
  it('is the same numbers where it is in that encoding already', () => {
    restated('rgb-neutral', picture, coated).zones.forEach((zone, i) => {
      zone.clusters[0].mean.forEach((value, j) => {
        assert.ok(Math.abs(value - picture.zones[i].clusters[0].mean[j]) < 1e-6);
      });
    });
  });
  it('has black alone, or four inks that print the press’s grey aim', () => {
    const lab = new Float64Array(3);
    for (const zone of restated('black-only', picture, coated).zones)
      assert.deepEqual(zone.clusters[0].mean.slice(0, 3), [0, 0, 0]);
    for (const zone of restated('four-channel', picture, coated).zones) {
      coated.daylight.lab(zone.clusters[0].mean, null, lab);
      assert.ok(Math.hypot(lab[1] - coated.aim.a(lab[0]), lab[2] - coated.aim.b(lab[0])) < 0.6);
    }
  });
  it('has inks of a usual press where the process takes none', () => {
    const photographic = pressOf(defaultTarget('silver-halide'));
    for (const zone of restated('four-channel', picture, photographic).zones)
      assert.equal(zone.clusters[0].mean.length, 4);
  });
  it('is forecast for every process, and is nothing where there is nothing to forecast', () => {
    for (const encoding of greyEncodings)
      for (const process of ['silver-halide', 'inkjet'] as const)
        assert.ok(forecastAs(encoding, greyScale(), defaultTarget(process))!.tint.bands.neutral > 0);
    assert.equal(forecastAs('black-only', pictureFacts({ zones: [] }), defaultTarget('inkjet')), null);
  });
});
