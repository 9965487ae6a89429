import assert from 'node:assert/strict';
import { defaultTarget, forecastValue, processes } from '../../../src/print';
import { expectations, figuresOf } from '../../../src/report/sheet/expect';

const on = (process: Parameters<typeof defaultTarget>[0]) =>
  forecastValue({ space: 'rgb', values: [0.5, 0.5, 0.5] }, defaultTarget(process));

describe('a forecast in sentences and numbers', () => {
  const forecast = on('silver-halide');
  const seen = (seen: number, seenObvious = 0) => ({
    ...forecast,
    tint: { ...forecast.tint, seen, seenObvious },
  });

  it('counts in orders, and never surer than that', () => {
    assert.equal(expectations(seen(0.4)).tint, 'A tint is seen in about 4 orders of 10.');
    assert.match(expectations(seen(0.6, 0.2)).tint, /6 orders of 10, an obvious one in about 2 orders/);
    assert.doesNotMatch(expectations(seen(0.001)).tint, /%|0 orders|never/);
    assert.doesNotMatch(expectations(seen(1)).tint, /always|every order\b(?<!nearly every order)/);
  });

  it('does not tell a share of the picture as a share of orders', () => {
    const half = { neutral: 0.5, faint: 0, visible: 0, obvious: 0, heavy: 0.5 };
    const tinted = { ...seen(1, 1), tint: { ...seen(1, 1).tint, bands: half } };
    assert.match(
      expectations(tinted).tint,
      /^A tint is seen in nearly every order, an obvious one in nearly/,
    );
    const figures = new Map(figuresOf(tinted));
    assert.equal(figures.get('Orders in which a tint is seen'), 'nearly every order');
    assert.equal(figures.get('  heavy (above 7)'), 'about 50 %');
    for (const [label, value] of figures) if (label.startsWith('  ')) assert.doesNotMatch(value, /in 10/);
  });

  it('says that a direction counts fainter tints than those that are seen', () => {
    const inks = { space: 'cmyk' as const, values: [0.5, 0.5, 0.5, 0] };
    const brown = forecastValue(inks, { ...defaultTarget('offset-coated'), route: 'inks' });
    assert.match(
      expectations(brown).direction,
      /^Faint tints counted too, it leans warm in (nearly every order|about \d orders of 10)\.$/,
    );
  });

  it('does not take the black of the encoding for that of the picture, nor the mean of two ways for one', () => {
    const zones = [{ ...forecast.zones[0], Lprint: 21.7 }];
    const range = { ...forecast.range, black: 15, blackDeepest: 10, blackWeakest: 15 };
    assert.match(
      expectations({ ...forecast, zones, range }).range,
      /^The deepest black of this encoding comes out at L\* 10 to 15, by what the house does with it, on a paper of \d+; the darkest zone of the picture at about 22; /,
    );
    const deep = { ...forecast, range, zones: [{ ...zones[0], Lprint: 16 }] };
    assert.doesNotMatch(expectations(deep).range, /darkest zone/);
  });

  it('shares ten orders among the bands, none too many', () => {
    const some = {
      ...forecast.tint,
      bands: { neutral: 0.35, faint: 0.35, visible: 0.24, obvious: 0.055, heavy: 0.005 },
    };
    const values = figuresOf({ ...forecast, tint: some }, { stated: true })
      .slice(0, 5)
      .map(([, value]) => value);
    const orders = values.map(value => Number(/^about (\d+)/.exec(value)?.[1] ?? 0));
    assert.equal(
      orders.reduce((sum, n) => sum + n),
      10,
      values.join('; '),
    );
    assert.equal(values[4], 'fewer than 1 in 20');
    const none = { neutral: 1, faint: 0, visible: 0, obvious: 0, heavy: 0 };
    const sure = { ...forecast, tint: { ...forecast.tint, bands: none } };
    assert.equal(figuresOf(sure, { stated: true })[0][1], 'nearly every order');
  });

  it('names no direction that the forecast has none of', () => {
    const none = { ...forecast, tint: { ...forecast.tint, direction: null } };
    assert.equal(expectations(none).direction, 'No predictable direction.');
    assert.ok(figuresOf(none).some(([, value]) => value === 'no predictable direction'));
  });

  it('has the same labels for every process, so that they stand in one table', () => {
    const labels = figuresOf(forecast).map(([label]) => label);
    for (const { id } of processes)
      assert.deepEqual(
        figuresOf(on(id)).map(([label]) => label),
        labels,
      );
    assert.equal(new Set(labels).size, labels.length);
  });

  it('says that shades close up only of shades, not of what is black in the file', () => {
    const black = (blockedShare: number, closedShare: number) => ({
      ...forecast,
      range: { ...forecast.range, blockedShare, closedShare },
    });
    assert.match(expectations(black(0, 0)).range, /; no shade of the picture closes up\.$/);
    assert.match(expectations(black(0.4, 0)).range, /; no shade of the picture closes up\.$/);
    assert.match(expectations(black(0.45, 0.05)).range, /; shades on 5 % of the picture close up\.$/);
    const figures = new Map(figuresOf(black(0.45, 0.05)));
    assert.equal(figures.get('Prints as black'), '45 %');
    assert.equal(figures.get('  of it shades of the file'), '5 %');
    assert.equal(new Map(figuresOf(black(0.4, 0))).get('  of it shades of the file'), 'nothing');
  });

  it('gives no odds of a tint, no direction and no shadows of black and white alone', () => {
    const [zone] = forecast.zones;
    const line = {
      ...forecast,
      zones: [
        { ...zone, L: 0, weight: 0.1 },
        { ...zone, L: 100, weight: 0.9 },
      ],
    };
    const { tint, direction, range } = expectations(line);
    assert.doesNotMatch(`${tint} ${direction} ${range}`, /orders|direction|lean|close|picture/);
    assert.match(range, /^Black comes out at L\* \d+ on a paper of \d+\.$/);
    assert.doesNotMatch(figuresOf(line).join(), /in 10|Direction|Prints as black/);
    assert.match(expectations(line, { stated: true }).tint, /orders? of/, 'one stated value is no drawing');
  });

  it('writes no minus zero', () => {
    const zero = { ...forecast, parts: { ...forecast.parts, light: { a: -0.01, b: 0.04 } } };
    assert.ok(figuresOf(zero).some(([label, value]) => label.includes('light') && value === '0.0 / 0.0'));
  });
});
