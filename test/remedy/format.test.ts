import assert from 'node:assert/strict';
import { formatChange, formatOf } from '../../src/remedy/format';
import { RemedyError } from '../../src/remedy/remedy-error';
import type { Format } from '../../src/shared/picture';
import { wishFor } from './support';

describe('the format of a result', () => {
  const cases: [source: Format, wish: Parameters<typeof wishFor>[0], format: string][] = [
    ['jpeg', {}, 'tiff'],
    ['jpeg', { quality: 92 }, 'jpeg'],
    ['jpeg', { to: 'black-only' }, 'tiff'],
    ['jpeg', { bits: 16, quality: 92 }, 'tiff'],
    ['jpeg', { format: 'jpeg' }, 'jpeg'],
    ['tiff', { quality: 92 }, 'tiff'],
    ['png', { bits: 16 }, 'png'],
    ['png', { to: 'black-only' }, 'tiff'],
    ['tiff', {}, 'tiff'],
    ['webp', {}, 'tiff'],
    ['avif', { to: 'single-channel' }, 'tiff'],
    ['gif', {}, 'tiff'],
    ['tiff', { format: 'jpeg' }, 'jpeg'],
    ['webp', { format: 'png' }, 'png'],
  ];
  for (const [source, wish, format] of cases)
    it(`of ${source} with ${JSON.stringify(wish)} is ${format}`, () =>
      assert.equal(formatOf(source, wishFor(wish), false), format));

  it('of a JPEG whose luminance stays as it is coded is JPEG', () => {
    assert.equal(formatOf('jpeg', wishFor(), true), 'jpeg');
    assert.equal(formatOf('jpeg', wishFor({ bits: 16 }), true), 'tiff');
  });

  it('is refused where it cannot hold what is wished', () => {
    assert.throws(() => formatOf('tiff', wishFor({ format: 'png', to: 'black-only' }), false), RemedyError);
    assert.throws(() => formatOf('tiff', wishFor({ format: 'jpeg', bits: 16 }), false), /A JPEG has 8 bits/);
  });
  it('is told where it changes unasked, with the reason', () => {
    assert.match(
      formatChange('png', wishFor({ to: 'black-only' }), 'no')!,
      /A PNG cannot hold inks: the result is a TIFF/,
    );
    assert.match(formatChange('jpeg', wishFor({ bits: 16 }), 'no')!, /cannot hold 16 bits/);
    assert.match(formatChange('webp', wishFor(), 'no')!, /WEBP/);
    assert.equal(formatChange('webp', wishFor({ format: 'tiff' }), 'no'), null);
    assert.match(formatChange('jpeg', wishFor(), 'no')!, /rounds.*the result is a TIFF.*--as jpeg/);
    assert.match(
      formatChange('jpeg', wishFor(), 'perhaps')!,
      /^A JPEG can perhaps keep these tones.*rounds them anew.*the result is a TIFF.*--as jpeg/,
    );
    for (const [wish, stays] of [
      [{}, 'surely'],
      [{ format: 'jpeg' }, 'no'],
      [{ quality: 92 }, 'no'],
    ] as const)
      assert.equal(formatChange('jpeg', wishFor(wish), stays), null);
  });
});
