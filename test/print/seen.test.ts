import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, forecastValue } from '../../src/print';
import { visibleShare } from '../../src/print/bands';
import { pressOf } from '../../src/print/press';
import { routeResults } from '../../src/print/route-result';
import { samplesOf } from '../../src/print/samples';
import { NOTICEABLE, seenIn, type TintedZone } from '../../src/print/seen';
import { visibility } from '../../src/print/visibility';
import type { LightId, ProcessId, RouteId } from '../../src/shared/target';
import { greyScale, inkScale, pictureFacts } from './facts';

const still = { drift: new Float64Array(6), shared: { a: 0, b: 0 } };
const zone = (weight: number, a: number, moves: TintedZone['moves'] = still): TintedZone => ({
  weight,
  tint: { a, b: 0 },
  moves,
});
const seenOf = (zones: TintedZone[]) => {
  const share = (limit: number) =>
    zones.reduce((sum, { weight, tint }) => sum + (tint.a >= limit ? weight : 0), 0);
  return seenIn(zones, { seen: share(2), seenObvious: share(4) });
};

/** By twenty thousand random orders: a tint of 2 and more on a quarter of the picture. */
function byChance(process: ProcessId, route: RouteId, light: LightId, facts = greyScale()) {
  const picture = samplesOf(facts)!;
  const target = { ...defaultTarget(process), route, light };
  const press = pressOf(target);
  let random = 977;
  const uniform = () => (random = (random * 48271) % 2147483647) / 2147483647;
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  let chance = 0;
  for (const { option, zones } of routeResults(picture, press, route)) {
    const weights = zones.map(({ response }, i) => picture.zones[i].weight * visibility(response.Lprint));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const orders = 20_000;
    let tinted = 0;
    for (let order = 0; order < orders; order++) {
      const draw = press.model.drifts.map(normal);
      const [u, v] = [normal(), normal()];
      let part = 0;
      zones.forEach(({ response: { a, b, aimA, aimB, moves } }, i) => {
        let [x, y] = [a - aimA + moves.shared.a * u, b - aimB + moves.shared.b * v];
        draw.forEach((z, cause) => {
          x += moves.drift[2 * cause] * z;
          y += moves.drift[2 * cause + 1] * z;
        });
        if (Math.hypot(x, y) >= 2) part += weights[i] / total;
      });
      if (part >= 0.25) tinted++;
    }
    chance += (option.weight * tinted) / orders;
  }
  return { chance, seen: forecastPicture(facts, target)!.tint.seen };
}

describe('orders in which a tint is seen', () => {
  it('are all where half of a picture is tinted in each, whatever the mean share says', () => {
    assert.equal(seenOf([zone(0.5, 14), zone(0.5, 0)]).seen, 1);
    assert.equal(seenOf([zone(0.5, 3), zone(0.5, 0)]).seenObvious, 0);
  });
  it('need a quarter of the picture', () => {
    assert.equal(NOTICEABLE, 0.25);
    assert.equal(seenOf([zone(0.25, 14), zone(0.75, 0)]).seen, 1);
    assert.ok(seenOf([zone(0.24, 14), zone(0.76, 0)]).seen < 1e-9);
  });
  it('of one grey are as many as its bands say, exactly', () => {
    for (const process of ['silver-halide', 'offset-coated', 'dry-toner'] as const) {
      const { seen, seenObvious, bands } = forecastValue(
        { space: 'grey', values: [0.5] },
        defaultTarget(process),
      ).tint;
      assert.ok(Math.abs(seen - visibleShare(bands)) < 1e-9, `${process}: ${seen}`);
      assert.ok(Math.abs(seenObvious - bands.obvious - bands.heavy) < 1e-9, `${process}: ${seenObvious}`);
    }
  });
  it('do not depend on how finely the same greys are divided into zones', () => {
    const grey = pictureFacts({}).zones[0];
    const target = defaultTarget('silver-halide');
    const whole = forecastPicture(pictureFacts({ zones: [grey] }), target)!;
    const halves = [0.1, 0.9].map(weight => ({ ...grey, weight }));
    const divided = forecastPicture(pictureFacts({ zones: halves }), target)!;
    assert.ok(Math.abs(divided.tint.seen - whole.tint.seen) < 1e-9);
  });
  it('of tinted shadows and tinted lights in turn are more than the mean share', () => {
    // a cause that turns the lights pinkish and the shadows greenish, or the other way round, by 3 either way
    const swing = (sign: number) => ({ drift: Float64Array.of(0.01, 0), shared: { a: sign * 0.5, b: 0 } });
    const zones = [zone(0.5, 2, swing(1)), zone(0.5, 2, swing(-1))];
    // one half or the other is at 2 or beyond in every order
    assert.ok(seenIn(zones, { seen: 0.5, seenObvious: 0 }).seen > 0.99);
  });

  for (const [process, route, light, facts] of [
    ['silver-halide', 'rgb', 'D50', greyScale()],
    ['silver-halide', 'rgb', 'FL11', greyScale()],
    ['liquid-toner', 'separated', 'D50', greyScale()],
    ['inkjet', 'unknown', 'LED-B3', greyScale()],
    ['offset-uncoated', 'inks', 'D50', inkScale(v => [v / 2, v / 2, v / 2, v / 2], 'four-channel')],
    ['offset-coated', 'inks', 'A', inkScale(v => [0, 0, 0, v], 'black-only')],
  ] as [ProcessId, RouteId, LightId, ReturnType<typeof greyScale>][])
    it(`on ${process} (${route}, ${light}, ${facts.encoding}) are as many as of random orders`, () => {
      const { chance, seen } = byChance(process, route, light, facts);
      assert.ok(Math.abs(chance - seen) < 0.03, `${chance} ${seen}`);
    });
});
