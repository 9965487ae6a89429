import assert from 'node:assert/strict';
import { routeOptions } from '../../src/print/routes';

const total = (options: { weight: number }[]) => options.reduce((sum, { weight }) => sum + weight, 0);
const kinds = (options: { handling: { kind: string } }[]) => [...new Set(options.map(o => o.handling.kind))];

describe('routes', () => {
  it('of an unknown one weigh 1 together, whatever the file', () => {
    for (const signal of ['inks', 'rgb'] as const)
      for (const space of ['grey', 'rgb', 'cmyk', 'lab'] as const)
        for (const neutral of [true, false])
          assert.ok(Math.abs(total(routeOptions(signal, 'unknown', space, neutral)) - 1) < 1e-12);
  });
  it('keep inks only of a file that holds inks', () => {
    assert.deepEqual(kinds(routeOptions('inks', 'inks', 'cmyk', false)), ['kept']);
    assert.deepEqual(kinds(routeOptions('inks', 'inks', 'rgb', true)), ['separated']);
    assert.deepEqual(kinds(routeOptions('inks', 'inks', 'grey', true)), ['grey-to-black']);
  });
  it('turn a toned picture into no black plate unless the house is known to', () => {
    assert.deepEqual(kinds(routeOptions('inks', 'unknown', 'rgb', false)), ['separated']);
    assert.deepEqual(kinds(routeOptions('inks', 'black-plate', 'rgb', false)), ['lightness-to-black']);
    assert.ok(kinds(routeOptions('inks', 'unknown', 'rgb', true)).includes('lightness-to-black'));
  });
  it('end in R, G, B on a photographic process, whatever was asked for', () => {
    assert.deepEqual(kinds(routeOptions('rgb', 'inks', 'rgb', true)), ['kept']);
    assert.deepEqual(kinds(routeOptions('rgb', 'unknown', 'cmyk', true)), ['to-rgb']);
    assert.equal(routeOptions('rgb', 'unknown', 'grey', true)[0].route, 'rgb');
  });
  it('list three amounts of black where a press separates', () =>
    assert.equal(routeOptions('inks', 'separated', 'cmyk', false).length, 3));
});
