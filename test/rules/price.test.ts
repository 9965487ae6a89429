import assert from 'node:assert/strict';
import { priceOf, pricesOf } from '../../src/rules/price';
import type { Recommend } from '../../src/rules/recommended';
import { picture, record, target } from './support/pictures';

const press = target('offset-coated', { name: 'edition', route: 'inks' });
const photographic = target('silver-halide', { name: 'dummy' });
const as =
  (encoding: 'black-only' | 'rgb-neutral'): Recommend =>
  () => ({ encoding, why: 'even' });
const byWay = (black: number, blackDeepest: number, blackWeakest: number) => ({
  black,
  blackDeepest,
  blackWeakest,
  blackRead: false,
});
const sure = (black: number) => byWay(black, black, black);

describe('the price of an encoding', () => {
  it('is a flatter black, of those pictures that lose by it', () => {
    const blacks = [
      { before: sure(14.2), after: sure(17.4) },
      { before: sure(11), after: sure(17.4) },
      { before: sure(25), after: sure(17.4) },
      { before: sure(16.45), after: sure(17.4) },
    ];
    assert.equal(
      priceOf('rgb-neutral', press, blacks),
      ' The price of rgb-neutral: black prints as L* 17 instead of 11 to 14.',
    );
    assert.equal(priceOf('rgb-neutral', press, blacks.slice(2)), '', 'as deep, or deeper');
  });
  it('of black ink alone is also its screen, where there is one', () => {
    assert.equal(
      priceOf('black-only', press, [{ before: sure(11), after: sure(16) }], ' (target "edition")'),
      ' The price of black-only (target "edition"): black prints as L* 16 instead of 11, and sharp eyes see the screen of a grey of one ink.',
    );
    assert.equal(priceOf('black-only', photographic, [{ before: sure(10), after: sure(10) }]), '');
  });
  it('is told no surer than it is known which way the house takes', () => {
    const likely15 = byWay(15, 10, 15);
    const likely10 = byWay(10, 10, 15);
    assert.equal(
      priceOf('single-channel', press, [{ before: sure(10), after: likely15 }]),
      ' The price of single-channel: black may print as L* 15 (10 to 15, by how the house prints it) instead of 10.',
    );
    assert.equal(
      priceOf('rgb-neutral', press, [{ before: likely10, after: sure(15) }]),
      ' The price of rgb-neutral: black prints as L* 15 instead of 10 to 15, by how the house prints it.',
    );
    assert.equal(
      priceOf('single-channel', press, [{ before: likely10, after: likely15 }]),
      '',
      'what may be 10 to 15 either way loses nothing that is known',
    );
  });
  it('is none where one black was read from prints of the house and the other is the process in general', () => {
    const read = { ...sure(14), blackRead: true };
    assert.equal(priceOf('rgb-neutral', photographic, [{ before: sure(6), after: read }]), '');
    assert.match(
      priceOf('rgb-neutral', photographic, [{ before: { ...sure(6), blackRead: true }, after: read }]),
      /L\* 14 instead of 6/,
    );
    const house = target('silver-halide', { printRecord: record('silver-halide', 14) });
    const inks = picture('four-channel', { targets: [house], inks: d => [d, d, d, d] });
    const channel = picture('single-channel', { targets: [house] });
    assert.equal(pricesOf([inks, channel], as('rgb-neutral'), [house]), '', 'one machine has one black');
  });
  it('is told for each target, by the forecasts of the pictures there', () => {
    const grey = picture('rgb-neutral', { targets: [press, photographic] });
    const told = pricesOf([grey], as('black-only'), [press, photographic]);
    const before = Math.round(grey.forecasts[0].range.black);
    assert.match(
      told,
      new RegExp(
        `^ The price of black-only \\(target "edition"\\): black prints as L\\* \\d+ instead of ${before}, and`,
      ),
    );
    const own = picture('black-only', { targets: [press] });
    assert.equal(pricesOf([own], as('black-only'), [press]), '', 'it stays as it is');
    assert.equal(pricesOf([own], as('rgb-neutral'), [press]), '', 'a deeper black costs nothing');
    const toned = picture('rgb-toned', { tone: [4, 12], intent: 'toned', targets: [press] });
    assert.equal(pricesOf([toned], as('black-only'), [press]), '');
  });
});
