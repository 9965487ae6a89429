import assert from 'node:assert/strict';
import { formatChange, formatOf } from '../../src/remedy/format';
import { RemedyError } from '../../src/remedy/remedy-error';
import type { Format } from '../../src/shared/picture';
import { wishFor } from './support';

describe('the format of a result', () => {
  const cases: [source: Format, wish: Parameters<typeof wishFor>[0], format: string][] = [
    ['jpeg', {}, 'jpeg'],
    ['jpeg', { to: 'black-only' }, 'jpeg'],
    ['jpeg', { bits: 16 }, 'tiff'],
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
      assert.equal(formatOf(source, wishFor(wish)), format));

  it('is refused where it cannot hold what is wished', () => {
    assert.throws(() => formatOf('tiff', wishFor({ format: 'png', to: 'black-only' })), RemedyError);
    assert.throws(() => formatOf('tiff', wishFor({ format: 'jpeg', bits: 16 })), /A JPEG has 8 bits/);
  });
  it('is told where it changes unasked, with the reason', () => {
    assert.match(
      formatChange('png', wishFor({ to: 'black-only' }))!,
      /A PNG cannot hold inks: the result is a TIFF/,
    );
    assert.match(formatChange('jpeg', wishFor({ bits: 16 }))!, /cannot hold 16 bits/);
    assert.match(formatChange('webp', wishFor())!, /WEBP/);
    assert.equal(formatChange('webp', wishFor({ format: 'tiff' })), null);
    assert.equal(formatChange('jpeg', wishFor()), null);
  });
});
