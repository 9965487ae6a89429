import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, forecastValue } from '../../src/print';
import { greyScale } from './facts';

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

describe('a mixture of routes', () => {
  it('averages probabilities, so that it is never narrower than the ways it is made of', () => {
    const { tint, routes } = forecastPicture(greyScale(), defaultTarget('dry-toner'))!;
    const mean = routes!.reduce((sum, route) => sum + route.weight * route.tint.bands.neutral, 0);
    assert.ok(Math.abs(tint.bands.neutral - mean) < 1e-9);
    const shares = routes!.map(route => route.tint.bands.neutral);
    assert.ok(Math.min(...shares) < tint.bands.neutral && tint.bands.neutral < Math.max(...shares));
  });
});
