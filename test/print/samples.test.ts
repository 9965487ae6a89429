import assert from 'node:assert/strict';
import { samplesOf } from '../../src/print/samples';
import { pictureFacts } from './facts';

describe('samples of a picture', () => {
  it('have the mean and covariance of each cluster', () => {
    const covariance = [0.01, 0.004, 0, 0.004, 0.02, 0, 0, 0, 0.0025];
    const facts = pictureFacts({
      zones: [
        {
          L: 50,
          a: 1,
          b: 2,
          weight: 1,
          clusters: [{ weight: 1, mean: [0.5, 0.4, 0.3], covariance }],
        },
      ],
    });
    const [cluster] = samplesOf(facts)!.zones[0].clusters;
    const n = cluster.points.length;
    assert.equal(n, 6);
    for (let i = 0; i < 3; i++) {
      const mean = cluster.points.reduce((sum, point) => sum + point[i], 0) / n;
      assert.ok(Math.abs(mean - cluster.mean[i]) < 1e-12);
      for (let j = 0; j < 3; j++) {
        const product = cluster.points.reduce(
          (sum, point) => sum + (point[i] - cluster.mean[i]) * (point[j] - cluster.mean[j]),
          0,
        );
        assert.ok(Math.abs(product / n - covariance[i * 3 + j]) < 1e-12);
      }
    }
  });
  it('are the mean alone where nothing scatters', () => {
    const facts = pictureFacts({});
    assert.deepEqual(samplesOf(facts)!.zones[0].clusters[0].points, [[0.5, 0.5, 0.5]]);
  });
  it('are worked out once for a picture', () => {
    const facts = pictureFacts({});
    assert.equal(samplesOf(facts), samplesOf(facts));
  });
  it('are none of a picture that could not be read, or has no opaque pixel', () => {
    assert.equal(samplesOf(pictureFacts({ space: null })), null);
    assert.equal(samplesOf(pictureFacts({ zones: [] })), null);
  });
  it('know whether the numbers are plain sRGB', () => {
    const profile = {
      description: 'sRGB IEC61966-2.1',
      space: 'rgb',
      class: 'display',
      greyAxisChroma: 0,
    } as const;
    assert.ok(samplesOf(pictureFacts({ profile }))!.plainRgb);
    assert.ok(!samplesOf(pictureFacts({ profile: { ...profile, description: 'Wide RGB' } }))!.plainRgb);
  });
});
