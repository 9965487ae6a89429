import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, papersFor, processes } from '../../../src/print';
import { possibleOrders } from '../../../src/report/sheet/orders';
import type { Forecast } from '../../../src/shared/forecast';
import type { LightId, RouteId, Target } from '../../../src/shared/target';
import { greyScale, inkScale, pictureFacts } from '../../print/facts';

const grey = (v: number) => {
  const [zone] = pictureFacts({}).zones;
  const clusters = [{ weight: 1, mean: [v, v, v], covariance: Array(9).fill(0) }];
  return pictureFacts({ zones: [{ ...zone, L: 100 * v, clusters }] });
};
const pictures = [
  greyScale(),
  { ...greyScale(), encoding: 'single-channel' as const },
  grey(0.7),
  grey(0.2),
  inkScale(k => [0, 0, 0, k], 'black-only'),
  inkScale(k => [0.8 * k, 0.7 * k, 0.7 * k, 0.4 * k], 'four-channel'),
  inkScale(k => [k, 0.9 * k, 0.9 * k, 0], 'three-ink'),
  // lights that take no tint, deep shadows whose tint hardly counts
  ...[0.1, 0.9].map(dark => {
    const scale = greyScale();
    const weight = (L: number) => (L < 50 ? dark : 1 - dark) / 6;
    return { ...scale, zones: scale.zones.map(zone => ({ ...zone, weight: weight(zone.L) })) };
  }),
];
const routes: RouteId[] = ['unknown', 'inks', 'separated', 'black-plate'];
const lights: LightId[] = ['D50', 'A'];

function forecasts(): { forecast: Forecast; target: Target }[] {
  return processes.flatMap(({ id }) =>
    papersFor(id).flatMap(paper =>
      routes.flatMap(route =>
        lights.flatMap(light => {
          const target = { ...defaultTarget(id), paper, route, light };
          return pictures.map(facts => ({ target, forecast: forecastPicture(facts, target)! }));
        }),
      ),
    ),
  );
}

describe('ten possible orders', () => {
  const all = forecasts();

  it('show a tint as often as the forecast says, within one, whatever the picture, press and route', () => {
    const seen = all.map(({ forecast }) => forecast.tint.seen);
    const mixtures = all.filter(
      ({ forecast: { routes: ways = [] } }) => new Set(ways.map(w => w.route)).size > 1,
    );
    assert.ok(Math.min(...seen) < 0.1 && Math.max(...seen) > 0.8 && mixtures.length > 100);
    for (const series of [0, 7])
      all.forEach(({ forecast, target }, i) => {
        const tinted = possibleOrders(forecast, target, series).filter(({ tint }) => tint.alone).length;
        const { process, paper, route, light } = target;
        assert.ok(
          Math.abs(tinted - 10 * seen[i]) <= 1,
          `${tinted} of ten for ${seen[i].toFixed(2)}: ${process} ${paper} ${route} ${light}`,
        );
      });
  }).timeout(60_000);

  it('are the same for the same forecast', () => {
    const [{ forecast, target }] = all;
    assert.deepEqual(possibleOrders(forecast, target, 3), possibleOrders(forecast, target, 3));
  });
});
