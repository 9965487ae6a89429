import assert from 'node:assert/strict';
import { sharp } from '../../../../src/picture/decode-sharp';
import { luminanceApart } from '../../../../src/remedy/file/lossless-jpeg';

const [WIDTH, HEIGHT] = [67, 45];
const SOI = Buffer.from([0xff, 0xd8]);

/** The same numbers whenever it is asked with the same seed. */
function random(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 1664525 + 1013904223) >>> 0) / 2 ** 32;
}

/** Colour with edges and noise, so that every kind of code comes. */
function coloured(): Uint8Array {
  const next = random(5);
  return Uint8Array.from(
    { length: WIDTH * HEIGHT * 3 },
    (_, i) => (i % 7) * 20 + (Math.floor(i / 600) % 2) * 90 + next() * 40,
  );
}

const jpeg = (options: object, data = coloured()) =>
  sharp(data, { raw: { width: WIDTH, height: HEIGHT, channels: 3 } })
    .jpeg({ quality: 90, ...options })
    .toBuffer();

/** As libjpeg decodes it, one channel or three. */
async function decoded(file: Buffer): Promise<Buffer> {
  const { space } = await sharp(file).metadata();
  return sharp(file).toColourspace(space!).raw().toBuffer();
}
const apart = (file: Buffer, channels: 1 | 3): Buffer | null => {
  const found = luminanceApart(file, channels);
  return found && Buffer.concat([SOI, found]);
};

describe('luminance apart', () => {
  it('is the same pixels as one channel and with colour that is none', async () => {
    for (const options of [{}, { progressive: true }, { chromaSubsampling: '4:4:4' }]) {
      const file = await jpeg(options);
      const grey = await decoded(apart(file, 1)!);
      const neutral = await decoded(apart(file, 3)!);
      assert.equal(grey.length, WIDTH * HEIGHT);
      assert.deepEqual(
        [...neutral],
        [...grey].flatMap(level => [level, level, level]),
      );
    }
  });

  it('of a neutral picture is that picture', async () => {
    const grey = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => (i % 67) * 3 + 17);
    const neutral = Uint8Array.from({ length: WIDTH * HEIGHT * 3 }, (_, i) => grey[Math.floor(i / 3)]);
    for (const options of [{}, { progressive: true, quality: 60 }, { quality: 100 }]) {
      const file = await jpeg(options, neutral);
      assert.deepEqual(await decoded(apart(file, 3)!), await decoded(file));
    }
  });

  it('keeps fine detail that stands alone, behind long runs of zeros', async () => {
    // one wave a block, another in the next: of all its coefficients that one alone is not zero
    const wave = (at: number, k: number) => Math.cos(((2 * (at % 8) + 1) * k * Math.PI) / 16);
    const neutral = Uint8Array.from({ length: WIDTH * HEIGHT * 3 }, (_, i) => {
      const [x, y] = [Math.floor(i / 3) % WIDTH, Math.floor(i / 3 / WIDTH)];
      const k = 1 + (Math.floor(x / 8) % 7);
      return Math.round(128 + 100 * wave(x, k) * wave(y, k));
    });
    for (const options of [{}, { progressive: true }]) {
      const file = await jpeg(options, neutral);
      assert.deepEqual(await decoded(apart(file, 3)!), await decoded(file));
    }
  });

  it('comes and goes: colour added and taken away again is the same file', async () => {
    const once = apart(await jpeg({}), 1)!;
    assert.deepEqual(apart(apart(once, 3)!, 1), once);
  });

  it('is none of what is no grey and no YCbCr', async () => {
    const inks = await sharp(await jpeg({}))
      .toColourspace('cmyk')
      .jpeg()
      .toBuffer();
    assert.equal(apart(inks, 1), null);
    assert.equal(apart(Buffer.from('no JPEG at all'), 1), null);
    assert.equal(apart(SOI, 1), null);
  });

  it('is none of a file that is cut anywhere', async () => {
    for (const options of [{}, { progressive: true }]) {
      const file = await jpeg(options);
      for (let end = 0; end < file.length - 2; end += 7)
        assert.equal(apart(file.subarray(0, end), 1), null, `${end} of ${file.length}`);
    }
  });

  it('ends with a JPEG or none whatever stands in the file', async () => {
    const next = random(1);
    let jpegs = 0;
    let none = 0;
    for (const options of [{}, { progressive: true }]) {
      const file = await jpeg(options);
      for (let i = 0; i < 1500; i++) {
        const damaged = Buffer.from(file);
        for (let n = 0; n < 1 + (i % 4); n++)
          damaged[2 + Math.floor(next() * (file.length - 2))] = Math.floor(next() * 256);
        if (apart(damaged, 3)) jpegs++;
        else none++;
      }
    }
    assert.ok(jpegs > 100 && none > 100, `${jpegs} and ${none}: the damage tests nothing`);
  });

  it('is none where a small file claims a picture that it cannot hold', async () => {
    for (const progressive of [false, true]) {
      const file = await jpeg({ progressive });
      const frame = file.indexOf(Buffer.from([0xff, progressive ? 0xc2 : 0xc0]));
      file.writeUInt16BE(65500, frame + 5);
      file.writeUInt16BE(65500, frame + 7);
      assert.equal(apart(file, 1), null);
    }
  });

  it('is not waited for where a small file claims scans without end', async () => {
    const file = await jpeg({ progressive: true });
    const scan = file.indexOf(Buffer.from([0xff, 0xda]));
    const next = file.indexOf(Buffer.from([0xff, 0xc4]), scan);
    const again = Buffer.concat(new Array(2000).fill(file.subarray(scan, next)));
    assert.equal(apart(Buffer.concat([file.subarray(0, scan), again, file.subarray(scan)]), 1), null);
  });
});
