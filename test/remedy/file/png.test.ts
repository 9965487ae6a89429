import assert from 'node:assert/strict';
import { bufferSource } from '../../../src/picture/header';
import { chunks } from '../../../src/picture/header/png';
import { crc32 } from '../../../src/remedy/file/crc';
import { pngBytes } from '../../../src/remedy/file/png';
import { fromPng } from '../../../src/remedy/metadata/source/png';
import { bare, stored } from './stored';

describe('pngBytes', () => {
  it('writes only chunks that were asked for, before the pixels, with right check sums', async () => {
    const density = { x: [300, 1], y: [300, 1], unit: 'inch' } as const;
    const file = await pngBytes(
      { ...stored('grey'), icc: Buffer.alloc(100) },
      bare({ density, xmp: '<a/>', texts: [{ keyword: 'Title', text: 'Tör' }] }),
    );
    const found = [...chunks(bufferSource(file))];
    const order = found.map(({ type }) => type).filter((type, i, all) => type !== all[i - 1]);
    assert.deepEqual(order, ['IHDR', 'iCCP', 'pHYs', 'iTXt', 'IDAT', 'IEND']);
    for (const { type, at, length } of found)
      assert.equal(file.readUInt32BE(at + length), crc32(file.subarray(at - 4, at + length)), type);
  });

  it('keeps IPTC and other resources, which PNG has no chunk for', async () => {
    const iptc = Buffer.from('\x1c\x02\x05\0\x01a', 'latin1');
    const resources = [{ id: 0x040b, name: Buffer.alloc(0), data: Buffer.from('somewhere') }];
    const found = fromPng(await pngBytes(stored('grey'), bare({ iptc, resources })));
    assert.ok(found.resources?.includes(iptc));
    assert.ok(found.resources?.includes('somewhere'));
  });
});
