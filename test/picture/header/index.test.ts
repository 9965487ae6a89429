import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { bufferSource, readHeader, type UnreadableError } from '../../../src/picture/header';
import { known, refused } from '../known';

const folder = 'test/picture/known';

describe('readHeader', () => {
  for (const expected of known) {
    const { file, page = 1 } = expected;
    it(`describes ${file}${page > 1 ? ` page ${page}` : ''}`, () => {
      const header = readHeader(bufferSource(fs.readFileSync(path.join(folder, file))), page);
      const said = expected.remarks ?? [];
      assert.deepEqual(
        {
          format: header.format,
          page: header.page,
          width: header.width,
          height: header.height,
          channels: header.channels,
          bits: header.bits,
          space: header.space,
          alpha: header.alpha,
          palette: header.palette,
          spots: header.spots,
          orientation: header.orientation,
          ppi: header.ppi,
          remarks: header.remarks.map(r => r.code),
        },
        {
          format: expected.format,
          page,
          width: expected.width,
          height: expected.height,
          channels: expected.channels,
          bits: expected.bits,
          space: expected.space,
          alpha: expected.alpha ?? false,
          palette: expected.palette ?? false,
          spots: expected.spots ?? 0,
          orientation: expected.orientation ?? 1,
          ppi: expected.ppi ?? null,
          remarks: said,
        },
      );
    });
  }

  for (const { file, format, says } of refused)
    it(`names ${file} and refuses it`, () => {
      assert.throws(
        () => readHeader(bufferSource(fs.readFileSync(path.join(folder, file)))),
        (error: UnreadableError) => {
          assert.equal(error.reason, 'format');
          assert.equal(error.format, format);
          assert.match(error.text, says);
          return true;
        },
      );
    });
});
