import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, forecastValue } from '../../src/print';
import type { ProcessId, RouteId } from '../../src/shared/target';
import { greyScale, inkScale } from './facts';

describe('a separation made for another condition', () => {
  const uncoated = { ...defaultTarget('offset-uncoated'), route: 'separated' as const };
  const wrong = { ...uncoated, separatedFor: { process: 'offset-coated', paper: 'gloss-coated' } as const };
  it('is off neutral where its own is not', () => {
    const grey = { space: 'rgb' as const, values: [0.55, 0.55, 0.55] };
    const own = forecastValue(grey, uncoated);
    const foreign = forecastValue(grey, wrong);
    assert.ok(own.tint.chroma < 0.3);
    assert.ok(foreign.tint.chroma > own.tint.chroma + 0.5, `${foreign.tint.chroma}`);
  });
  it('changes nothing where inks are kept, or none are printed', () => {
    const inks = { space: 'cmyk' as const, values: [0.4, 0.3, 0.3, 0.1] };
    assert.deepEqual(
      forecastValue(inks, { ...wrong, route: 'inks' }).tint,
      forecastValue(inks, { ...uncoated, route: 'inks' }).tint,
    );
  });
  it('cannot be one for photographic paper', () =>
    assert.throws(
      () =>
        forecastPicture(greyScale(), {
          ...uncoated,
          separatedFor: { process: 'silver-halide', paper: 'photo-lustre' },
        }),
      /nothing is separated into inks for Silver halide/,
    ));
});

describe('the route of a forecast', () => {
  const routeOf = (space: 'rgb' | 'grey' | 'cmyk', route: RouteId, process: ProcessId = 'offset-coated') => {
    const values = { rgb: [0.5, 0.5, 0.5], grey: [0.5], cmyk: [0.4, 0.3, 0.3, 0.1] }[space];
    return forecastValue({ space, values }, { ...defaultTarget(process), route }).condition.route;
  };
  it('is the one that the file takes, whatever was asked', () => {
    assert.equal(routeOf('cmyk', 'inks'), 'inks');
    assert.equal(routeOf('rgb', 'inks'), 'separated', 'R, G, B cannot be kept as inks');
    assert.equal(routeOf('grey', 'inks'), 'black-plate');
    assert.equal(routeOf('rgb', 'rgb'), 'separated', 'a press takes no R, G, B');
    assert.equal(routeOf('cmyk', 'inks', 'silver-halide'), 'rgb');
    assert.equal(routeOf('cmyk', 'unknown', 'silver-halide'), 'rgb');
  });
  it('is not known where the file may take several', () => {
    for (const space of ['rgb', 'grey'] as const) assert.equal(routeOf(space, 'unknown'), 'unknown');
    const black = inkScale(v => [0, 0, 0, v], 'black-only');
    assert.equal(forecastPicture(black, defaultTarget('offset-coated'))!.condition.route, 'unknown');
    assert.equal(routeOf('cmyk', 'unknown'), 'inks', 'stated inks are sent as they are');
  });
  it('of a picture with a tone is separation, the only way for it', () => {
    const zones = greyScale().zones.map(zone => ({
      ...zone,
      b: 10,
      clusters: zone.clusters.map(cluster => ({ ...cluster, mean: [0.6, 0.5, 0.4] })),
    }));
    const toned = { ...greyScale(), encoding: 'rgb-toned' as const, zones };
    const { condition } = forecastPicture(toned, defaultTarget('offset-coated'))!;
    assert.equal(condition.route, 'separated');
  });
});

describe('a mixture of routes', () => {
  it('averages probabilities, so that it is never narrower than the ways it is made of', () => {
    const { tint, routes } = forecastPicture(greyScale(), defaultTarget('dry-toner'))!;
    const mean = routes!.reduce((sum, route) => sum + route.weight * route.tint.bands.neutral, 0);
    assert.ok(Math.abs(tint.bands.neutral - mean) < 1e-9);
    const shares = routes!.map(route => route.tint.bands.neutral);
    assert.ok(Math.min(...shares) < tint.bands.neutral && tint.bands.neutral < Math.max(...shares));
  });
});
