import assert from 'node:assert/strict';
import { bufferSource } from '../../../src/picture/header';
import { segments } from '../../../src/picture/header/jpeg';
import { jpegBytes } from '../../../src/remedy/file/jpeg';
import { FieldMaker } from '../../../src/remedy/metadata/fields';
import { fromJpeg } from '../../../src/remedy/metadata/source/jpeg';
import { emptyTree } from '../../../src/remedy/metadata/tree';
import { bare, stored } from './stored';

const markers = (file: Buffer) => [...segments(bufferSource(file))].map(({ marker }) => marker.toString(16));

describe('jpegBytes', () => {
  it('puts metadata first, in the order that readers look for it', async () => {
    const carried = bare({
      exif: { ...emptyTree(), main: [new FieldMaker(false).ascii(315, 'Nobody')] },
      iptc: Buffer.from('\x1c\x02\x05\0\x01a', 'latin1'),
      xmp: '<a/>',
      texts: [{ keyword: 'Comment', text: 'hello' }],
    });
    const grey = markers(await jpegBytes({ ...stored('grey'), icc: Buffer.alloc(10) }, 90, carried));
    assert.deepEqual(grey.slice(0, 6), ['e0', 'e1', 'e1', 'ed', 'e2', 'fe']);
    const inks = markers(await jpegBytes(stored('cmyk'), 90, carried));
    assert.deepEqual(inks.slice(0, 4), ['e1', 'e1', 'ed', 'fe']);
    assert.ok(inks.includes('ee'), 'says which way inks are stored');
    assert.equal(grey.includes('ee'), false);
  });

  it('spreads what is too long for one segment over several', async () => {
    const iptc = Buffer.alloc(150_000, '\x1c\x02\x19\0\x04gate', 'latin1');
    const texts = [{ keyword: 'Comment', text: 'a'.repeat(70_000) }];
    const found = fromJpeg(await jpegBytes(stored('grey'), 90, bare({ iptc, texts })));
    assert.ok(found.resources?.includes(iptc));
    assert.deepEqual(
      found.texts.map(({ text }) => text.length),
      [65_533, 70_000 - 65_533],
    );
  });

  it('stores no chroma at a lower resolution', async () => {
    const file = await jpegBytes(stored('rgb'), 90, bare());
    const frame = [...segments(bufferSource(file))].find(({ marker }) => marker === 0xc0)!;
    // sampling factors of the three components (T.81 annex B.2.2)
    const factors = [0, 1, 2].map(c => file[frame.start + 11 + c * 3]);
    assert.deepEqual(factors, [0x11, 0x11, 0x11]);
  });
});
