import assert from 'node:assert/strict';
import { defaultTarget, forecastValue, processes } from '../../../src/print';
import { expectations, figuresOf } from '../../../src/report/sheet/expect';

const on = (process: Parameters<typeof defaultTarget>[0]) =>
  forecastValue({ space: 'rgb', values: [0.5, 0.5, 0.5] }, defaultTarget(process));

describe('a forecast in sentences and numbers', () => {
  const forecast = on('silver-halide');
  const bands = (neutral: number, visible: number, obvious: number) => ({
    ...forecast,
    tint: { ...forecast.tint, bands: { neutral, faint: 0, visible, obvious, heavy: 0 } },
  });

  it('counts in orders, and never surer than that', () => {
    assert.equal(expectations(bands(0.6, 0.4, 0)).tint, 'A tint is seen in about 4 orders of 10.');
    assert.match(expectations(bands(0.4, 0.4, 0.2)).tint, /6 orders of 10, an obvious one in about 2 orders/);
    assert.doesNotMatch(expectations(bands(0.999, 0.001, 0)).tint, /%|0 orders|never/);
    assert.doesNotMatch(expectations(bands(0, 1, 0)).tint, /always|every order\b(?<!nearly every order)/);
  });

  it('shares ten orders among the bands, none too many', () => {
    const some = {
      ...forecast.tint,
      bands: { neutral: 0.35, faint: 0.35, visible: 0.24, obvious: 0.055, heavy: 0.005 },
    };
    const values = figuresOf({ ...forecast, tint: some })
      .slice(0, 5)
      .map(([, value]) => value);
    const orders = values.map(value => Number(/^about (\d+)/.exec(value)?.[1] ?? 0));
    assert.equal(
      orders.reduce((sum, n) => sum + n),
      10,
      values.join('; '),
    );
    assert.equal(values[4], 'fewer than 1 in 20');
    assert.equal(figuresOf(bands(1, 0, 0))[0][1], 'nearly every order');
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

  it('writes no minus zero', () => {
    const zero = { ...forecast, parts: { ...forecast.parts, light: { a: -0.01, b: 0.04 } } };
    assert.ok(figuresOf(zero).some(([label, value]) => label.includes('light') && value === '0.0 / 0.0'));
  });
});
