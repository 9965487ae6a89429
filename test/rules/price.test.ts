import assert from 'node:assert/strict';
import { priceOf, pricesOf } from '../../src/rules/price';
import type { Recommend } from '../../src/rules/recommended';
import { picture, target } from './support/pictures';

const press = target('offset-coated', { name: 'edition', route: 'inks' });
const photographic = target('silver-halide', { name: 'dummy' });
const as =
  (encoding: 'black-only' | 'rgb-neutral'): Recommend =>
  () => ({ encoding, why: 'even' });

describe('the price of an encoding', () => {
  it('is a flatter black, of those pictures that lose by it', () => {
    const blacks = [
      { before: 14.2, after: 17.4 },
      { before: 11, after: 17.4 },
      { before: 25, after: 17.4 },
      { before: 16.45, after: 17.4 },
    ];
    assert.equal(
      priceOf('rgb-neutral', press, blacks),
      ' The price of rgb-neutral: black prints as L* 17 instead of 11 to 14.',
    );
    assert.equal(priceOf('rgb-neutral', press, blacks.slice(2)), '', 'as deep, or deeper');
  });
  it('of black ink alone is also its screen, where there is one', () => {
    assert.equal(
      priceOf('black-only', press, [{ before: 11, after: 16 }], ' (target "edition")'),
      ' The price of black-only (target "edition"): black prints as L* 16 instead of 11, and sharp eyes see the screen of a grey of one ink.',
    );
    assert.equal(priceOf('black-only', photographic, [{ before: 10, after: 10 }]), '');
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
