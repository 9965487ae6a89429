import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { makeDemo } from '../../src/demo';
import { readFacts } from '../../src/picture/read';
import { remedyPicture } from '../../src/remedy/picture';
import { wishFor } from '../remedy/support';

const TO = ['rgb-neutral', 'single-channel', 'black-only'] as const;

describe('the demo book converted', function () {
  this.timeout(300_000);
  let folder: string;
  let pictures: string[];
  before(async () => {
    folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-demo-grey-'));
    pictures = await makeDemo(path.join(folder, 'book'));
  });
  after(() => fs.rmSync(folder, { recursive: true }));

  for (const to of TO)
    it(`every encoding becomes ${to}: found so, same size and density, L* within 0.5 in 8 bits (JPEG: within 1)`, async function () {
      const encodings = pictures.filter(file => file.startsWith('encodings/') || file.startsWith('extras/'));
      assert.ok(encodings.length >= 9, `${encodings}`);
      const most = { jpeg: 0, tiff: 0, png: 0 };
      const found = new Set<string>();
      for (const file of encodings) {
        const source = path.join(folder, 'book', file);
        const result = path.join(folder, 'result.tmp');
        const [before] = await readFacts({ file: source });
        const { format, proof } = await remedyPicture(source, result, wishFor({ to, bits: 8 }));
        const [after] = await readFacts({ file: result });
        assert.equal(after.encoding, to, file);
        assert.deepEqual(
          [after.width, after.height, after.ppi],
          [before.width, before.height, before.ppi],
          file,
        );
        assert.ok(proof.maxError < (format === 'jpeg' ? 1 : 0.5), `${file}: ${proof.maxError}`);
        most[format] = Math.max(most[format], proof.maxError);
        found.add(before.encoding);
      }
      assert.ok(found.size >= 8, [...found].join());
      this.test!.title +=
        `; at most ${most.tiff.toFixed(2)} in TIFF, ${most.jpeg.toFixed(2)} in JPEG of quality 100`;
    });
});
