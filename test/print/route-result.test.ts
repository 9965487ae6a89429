import assert from 'node:assert/strict';
import { defaultTarget, forecastValue, processes } from '../../src/print';
import type { AB } from '../../src/shared/forecast';
import type { LightId, PaperId } from '../../src/shared/target';

const grey = { space: 'rgb' as const, values: [0.5, 0.5, 0.5] };
const black = { space: 'cmyk' as const, values: [0, 0, 0, 0.5] };
const near = (is: AB, should: AB, by: number) => {
  assert.ok(
    Math.hypot(is.a - should.a, is.b - should.b) <= by,
    `${JSON.stringify(is)} ${JSON.stringify(should)}`,
  );
};
const plus = (x: AB, y: AB): AB => ({ a: x.a + y.a, b: x.b + y.b });

describe('the parts of a forecast', () => {
  it('add up: tint of process, encoding and light; light of colourants and brightener; absolute of tint and paper', () => {
    for (const { id } of processes)
      for (const light of ['D50', 'D65', 'A', 'LED-B3'] as const) {
        const { tint, parts, lightParts, absolute } = forecastValue(grey, { ...defaultTarget(id), light });
        near(plus(plus(parts.process, parts.encoding), parts.light), tint, 1e-9);
        near(plus(lightParts.colourants, lightParts.brightener), parts.light, 1e-9);
        near(plus(tint, parts.paper), absolute, 1e-9);
      }
  });

  const on = (paper: PaperId, light: LightId, value = black) =>
    forecastValue(value, { ...defaultTarget('offset-coated'), paper, light }).lightParts;

  it('without brightener all that a light does is the colourants’', () => {
    near(
      on('grade-3-coated', 'A', { space: 'cmyk', values: [0.5, 0.4, 0.4, 0] }).brightener,
      { a: 0, b: 0 },
      0,
    );
  });

  it('a flat black on a brightened paper moves by the brightener alone', () => {
    for (const light of ['D65', 'LED-B3'] as const) {
      const { colourants, brightener } = on('gloss-coated-bright', light);
      assert.ok(Math.hypot(colourants.a, colourants.b) < 0.4, `${light} ${JSON.stringify(colourants)}`);
      assert.ok(Math.hypot(brightener.a, brightener.b) > 0.1, `${light} ${JSON.stringify(brightener)}`);
    }
  });

  it('under D50 there is no light part', () => {
    assert.deepEqual(on('gloss-coated-bright', 'D50'), {
      colourants: { a: 0, b: 0 },
      brightener: { a: 0, b: 0 },
    });
  });
});
