import assert from 'node:assert/strict';
import fs from 'node:fs';
import { decode } from '../../src/picture/decode';
import { hasStrayBytes, isHarmless, withoutStrayBytes } from '../../src/picture/decode-tolerance';
import { bufferSource, readHeader } from '../../src/picture/header';
import { greyPage, LONG, tiffBytes } from './bytes';

const decodeBytes = (bytes: Buffer) => decode(bytes, readHeader(bufferSource(bytes)));
const jpeg = fs.readFileSync('test/picture/known/grey.jpg');

/** 8 x 8 grey at the given offset, with a date that has no end mark (type 2, three characters). */
function withBadDate(): Buffer {
  const strip = [273, LONG, [1000]] as [number, number, number[]];
  const page = greyPage([strip, [278, LONG, [8]], [279, LONG, [64]], [306, 2, [65, 66, 67]]]);
  const bytes = Buffer.alloc(1064, 77);
  tiffBytes([page]).copy(bytes);
  return bytes;
}

describe('tolerance', () => {
  it('reads a TIFF whose date lacks its end mark', async () => {
    const { data } = await decodeBytes(withBadDate());
    assert.deepEqual([...new Set(data)], [77]);
  });

  it('reads a JPEG with stray bytes between the segments of its header', async () => {
    const at = jpeg.indexOf(Buffer.from([0xff, 0xdb]));
    const stray = Buffer.concat([jpeg.subarray(0, at), Buffer.from([0, 0, 0]), jpeg.subarray(at)]);
    assert.ok(withoutStrayBytes(stray).equals(jpeg));
    assert.deepEqual((await decodeBytes(stray)).data, (await decodeBytes(jpeg)).data);
  });

  it('does not read on where the entropy-coded data break off', async () => {
    const at = jpeg.indexOf(Buffer.from([0xff, 0xda])) + 20;
    const broken = Buffer.concat([jpeg.subarray(0, at), Buffer.from([0xff, 0xd0]), jpeg.subarray(at)]);
    await assert.rejects(decodeBytes(broken), { name: 'UnreadableError' });
  });

  it('knows warnings of tags from warnings of pixels', () => {
    const first = 'Warning treated as error due to failOn setting';
    assert.ok(
      isHarmless(`${first}\nASCII value for tag "Artist" does not end in null byte.\nerror in tile 0 x 0`),
    );
    assert.ok(isHarmless(`${first}\nIncompatible type for "YResolution"; tag ignored`));
    assert.ok(!isHarmless(`${first}\nIncompatible type for "StripOffsets"; tag ignored`));
    assert.ok(!isHarmless(`${first}\nCorrupt JPEG data: premature end of data segment`));
    assert.ok(!isHarmless('tiff2vips: read error'));
    assert.ok(hasStrayBytes('VipsJpeg: Corrupt JPEG data: 2 extraneous bytes before marker 0xdb'));
    assert.ok(
      !hasStrayBytes('VipsJpeg: Corrupt JPEG data: 2 extraneous bytes before marker 0xd3'),
      'a restart marker',
    );
  });
});
