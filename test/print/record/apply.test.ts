import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, forecastValue } from '../../../src/print';
import type { Forecast } from '../../../src/shared/forecast';
import type { PrintRecord, RecordReading, Target } from '../../../src/shared/target';
import { greyScale, inkScale } from '../facts';

const reading = (a: number, b: number, change: Partial<RecordReading> = {}): RecordReading => ({
  encoding: 'rgb-neutral',
  orders: 4,
  greys: [{ L: 50, a, b }],
  order: { a: 0.5, b: 0.5 },
  page: { a: 0.2, b: 0.2 },
  black: null,
  ...change,
});
const target = (readings: RecordReading[], change: Partial<PrintRecord> = {}): Target => ({
  ...defaultTarget('silver-halide'),
  printRecord: { process: 'silver-halide', paper: null, date: '2026-03-01', readings, ...change },
});
const grey = { space: 'rgb' as const, values: [0.5, 0.5, 0.5] };
const exact = ({ tint, parts, absolute }: Forecast) => {
  for (const axis of ['a', 'b'] as const) {
    assert.ok(Math.abs(parts.process[axis] + parts.encoding[axis] + parts.light[axis] - tint[axis]) < 1e-12);
    assert.ok(Math.abs(tint[axis] + parts.paper[axis] - absolute[axis]) < 1e-12);
  }
};

describe('forecast by a record', () => {
  it('of a* +3.7, b* +1.5 and SD 0.5 names its direction, for a value and for pictures', () => {
    for (const forecast of [
      forecastValue(grey, target([reading(3.7, 1.5)])),
      forecastPicture(greyScale(), target([reading(3.7, 1.5)]))!,
    ]) {
      exact(forecast);
      assert.equal(forecast.condition.basis, 'record');
      // hue 22 degrees is warm, below 20 it is pinkish
      assert.equal(forecast.tint.direction, 'warm');
      assert.ok(forecast.tint.directionProbability > 0.95);
      // shrunk a little towards the process, most where that is sure: near the paper and in black
      assert.ok(Math.abs(forecast.tint.a - 3.7) < 0.5 && Math.abs(forecast.tint.b - 1.5) < 0.25);
      assert.ok(forecast.spread.order.a < 0.7 && forecast.spread.order.a > 0.45);
    }
    assert.equal(forecastValue(grey, target([reading(3.7, 1)])).tint.direction, 'pinkish');
  });
  it('says date, orders and what scatter is left', () => {
    const [first] = forecastValue(grey, target([reading(3.7, 1.5)])).ground;
    assert.equal(
      first,
      '4 orders of this print house read, the last on 2026-03-01; from one order to the next it scatters by 0.5 in a* and 0.5 in b*',
    );
  });
  it('of one order stands between the process and the reading, and is less sure', () => {
    const one = forecastValue(grey, target([reading(3, 0, { orders: 1, order: null })]));
    const many = forecastValue(grey, target([reading(3, 0)]));
    assert.ok(one.tint.a > 1.5 && one.tint.a < 2.5, `${one.tint.a}`);
    assert.ok(one.spread.order.a > many.spread.order.a * 1.5);
    const none = forecastValue(grey, defaultTarget('silver-halide'));
    assert.ok(one.spread.order.a < none.spread.order.a);
  });
  it('of one order of black ink knows that the next has the same ink: it scatters no more than orders do', () => {
    const black = inkScale(v => [0, 0, 0, v], 'black-only');
    const one: PrintRecord = {
      process: 'offset-coated',
      paper: null,
      date: '2026-03-01',
      readings: [reading(1.5, 2, { encoding: 'black-only', orders: 1, order: null })],
    };
    const kept = { ...defaultTarget('offset-coated'), route: 'inks' as const };
    const generic = forecastPicture(black, kept)!;
    const { tint, spread } = forecastPicture(black, { ...kept, printRecord: one })!;
    // no less than an instrument's error, 0.25, and far from the shade by which houses differ
    assert.ok(spread.order.a < 0.27 && spread.order.b < 0.27, JSON.stringify(spread.order));
    assert.ok(spread.house.a < generic.spread.house.a);
    assert.ok(tint.a > 0.8 && tint.b > 1.2, `${tint.a} ${tint.b}`);
  });
  it('of a neutral house is neutral', () => {
    const { tint } = forecastValue(grey, target([reading(0, 0, { order: { a: 0.3, b: 0.3 } })]));
    assert.ok(tint.bands.neutral > 0.9);
    assert.equal(tint.direction, null);
  });
  it('of greys of two lightnesses crosses over', () => {
    const crossed = reading(0, 0, {
      greys: [
        { L: 80, a: 3, b: 0 },
        { L: 25, a: -3, b: 0 },
      ],
    });
    const { zones, tint } = forecastPicture(greyScale(), target([crossed]))!;
    const light = zones.find(zone => zone.L > 75)!;
    const dark = zones.find(zone => zone.L < 30)!;
    assert.ok(light.a - light.aimA > 1.5 && dark.a - dark.aimA < -1.5);
    assert.ok(tint.bands.visible > 0.2);
  });
  it('keeps the light apart, and takes paper and black as they were read', () => {
    const read = target([reading(2, 0, { black: 9 })], { paper: [92, 0, 1] });
    const day = forecastValue(grey, read);
    const lamp = forecastValue(grey, { ...read, light: 'LED-B3' });
    exact(lamp);
    assert.deepEqual(day.parts.light, { a: 0, b: 0 });
    assert.ok(Math.abs(lamp.parts.process.a - day.parts.process.a) < 0.05);
    assert.equal(day.range.black, 9);
    assert.ok(Math.abs(day.range.white - 92) < 1e-6);
  });
  it('of R = G = B holds for one grey channel where R, G, B is printed, and is less sure', () => {
    const read = target([reading(0.5, -5, { black: 14 })]);
    const [own, borrowed] = [
      forecastValue(grey, read),
      forecastValue({ space: 'grey', values: [0.5] }, read),
    ];
    exact(borrowed);
    assert.deepEqual([own.condition.reading, borrowed.condition.reading], ['own', 'alike']);
    assert.equal(borrowed.condition.basis, 'record');
    for (const axis of ['a', 'b'] as const) {
      assert.ok(Math.abs(borrowed.tint[axis] - own.tint[axis]) < 0.01, JSON.stringify(borrowed.tint));
      const [known, unsure] = [own, borrowed].map(({ spread }) => spread.house[axis]);
      assert.ok(Math.abs(unsure ** 2 - known ** 2 - 0.25) < 1e-9, `${known} ${unsure}`);
    }
    assert.match(
      borrowed.ground[0],
      /of greys sent as R = G = B read, the last on \d{4}-\d\d-\d\d, and taken to hold for one grey channel/,
    );
    assert.doesNotMatch(own.ground[0], /taken to hold/);
  });
  it('of one grey channel holds for R = G = B, a reading of its own goes first', () => {
    const channel = reading(2, 0, { encoding: 'single-channel' });
    assert.equal(forecastValue(grey, target([channel])).condition.reading, 'alike');
    const both = forecastValue(grey, target([channel, reading(-2, 0)]));
    assert.equal(both.condition.reading, 'own');
    assert.ok(both.tint.a < -1.5);
  });
  it('of R = G = B says nothing of one grey channel where the press does other things with the two', () => {
    const record: PrintRecord = {
      process: 'offset-coated',
      paper: null,
      date: '2026-03-01',
      readings: [reading(1, -2, { black: 20 })],
    };
    const on = (route: Target['route']) =>
      forecastValue(
        { space: 'grey', values: [0.5] },
        { ...defaultTarget('offset-coated'), route, printRecord: record },
      );
    assert.equal(on('separated').condition.reading, 'alike', 'both are separated');
    for (const route of ['unknown', 'black-plate'] as const) {
      const { condition, range } = on(route);
      assert.deepEqual([condition.reading, condition.basis, range.blackRead], [null, 'data', false], route);
    }
  });
  it('without a reading of such files stays generic, and says so', () => {
    const forecast = forecastPicture(
      inkScale(v => [0, 0, 0, v], 'black-only'),
      target([reading(3, 0)]),
    )!;
    assert.equal(forecast.condition.basis, 'generic');
    assert.match(forecast.ground[0], /holds no reading of greys that are stored like these/);
  });
  it('lists no routes: what the house does is in the reading', () => {
    const coated = defaultTarget('offset-coated');
    const record: PrintRecord = {
      process: 'offset-coated',
      paper: null,
      date: '2026-03-01',
      readings: [reading(1, -2)],
    };
    const forecast = forecastPicture(greyScale(), { ...coated, printRecord: record })!;
    exact(forecast);
    assert.equal(forecast.routes, undefined);
    assert.equal(forecast.tint.direction, 'bluish');
  });
});
