import assert from 'node:assert/strict';
import { FieldMaker } from '../../../src/remedy/metadata/fields';
import { fitted } from '../../../src/remedy/metadata/fit';
import { emptyTree } from '../../../src/remedy/metadata/tree';
import { bare, stored } from '../file/stored';

const density = { x: [300, 1], y: [300, 1], unit: 'inch' } as const;
const ids = ({ exif }: { exif: { main: { id: number }[] } | null }) => exif?.main.map(({ id }) => id);

describe('fitted', () => {
  it('makes EXIF only where it says what nothing else can', () => {
    assert.equal(fitted(bare({ density }), stored('grey'), 'jpeg').exif, null);
    assert.equal(fitted(bare({ density }), stored('grey'), 'png').exif, null);
    assert.deepEqual(ids(fitted(bare({ density }), stored('cmyk'), 'jpeg')), [282, 283, 296]);
    assert.deepEqual(ids(fitted(bare({ orientation: 3 }), stored('grey'), 'png')), [274]);
    assert.deepEqual(ids(fitted(bare({ density }), stored('grey'), 'tiff')), [282, 283, 296]);
  });

  it('keeps what was told and adds what finds no place', () => {
    const exif = { ...emptyTree(), main: [new FieldMaker(false).bytes(60_001, Buffer.alloc(70_000))] };
    const carried = bare({ exif, told: ['before'], texts: [{ keyword: 'Warning', text: 'w' }] });
    assert.deepEqual(
      (['jpeg', 'png', 'tiff'] as const).map(format => fitted(carried, stored('grey'), format).told.length),
      [2, 1, 2],
    );
  });
});
