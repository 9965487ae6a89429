import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { plainProfile } from '../../src/colour/icc/write';
import { sharp } from '../../src/picture/decode-sharp';
import { readFacts } from '../../src/picture/read';
import { greyProfile } from '../../src/remedy/encode/profiles';
import { fileStoresLuminance, luminanceStays } from '../../src/remedy/luminance';
import { remedyPicture } from '../../src/remedy/picture';
import { readPicture } from '../../src/remedy/source';
import type { RemedyWish } from '../../src/shared/remedy';
import { greyFacts } from '../book/support/facts';
import { temporaryFolder } from '../book/support/folder';
import { wishFor } from './support';

const [WIDTH, HEIGHT] = [83, 50];

/** A picture with edges; `lean` is added to red and taken from blue. */
async function jpeg(
  name: string,
  { lean = 0, channels = 3, progressive = false, icc = '' } = {},
): Promise<string> {
  const file = path.join(temporaryFolder({}), name);
  const data = Uint8Array.from({ length: WIDTH * HEIGHT * 3 }, (_, i) => {
    const [x, y] = [Math.floor(i / 3) % WIDTH, Math.floor(i / 3 / WIDTH)];
    return 40 + x * 2 + (y % 9 > 4 ? 25 : 0) + [lean, 0, -lean][i % 3];
  });
  const image = sharp(data, { raw: { width: WIDTH, height: HEIGHT, channels: 3 } });
  if (channels === 1) image.toColourspace('b-w');
  if (icc) image.withIccProfile(icc);
  fs.writeFileSync(
    file,
    await image.jpeg({ quality: 85, progressive, chromaSubsampling: '4:2:0' }).toBuffer(),
  );
  return file;
}

const temp = (source: string) => `${source}.tmp`;
const pixels = async (file: string) => (await readPicture(file)).samples.data;

describe('a JPEG of which only colour goes or comes', () => {
  const ways = [
    ['rgb-neutral', 3, 'single-channel', 1, /colour channels were left out.*stayed as it was coded/],
    ['single-channel', 1, 'rgb-neutral', 3, /without colour were added.*stayed as it was coded/],
  ] as const;
  for (const [from, channels, to, made, told] of ways)
    it(`from ${from} to ${to} stays a JPEG with the very same tones`, async () => {
      const file = await jpeg('a.jpg', { channels });
      const result = await remedyPicture(file, temp(file), wishFor({ to }));
      assert.deepEqual([result.fromEncoding, result.format, result.proof.encoding], [from, 'jpeg', to]);
      assert.match(result.told.join(' '), told);
      assert.ok(result.proof.maxError < 0.01, `${result.proof.maxError}`);
      const [before, after] = [await pixels(file), await pixels(temp(file))];
      assert.equal(after.length, WIDTH * HEIGHT * made);
      for (let i = 0; i < WIDTH * HEIGHT; i++) assert.equal(after[i * made], before[i * channels]);
    });

  for (const progressive of [false, true])
    it(`${progressive ? 'progressive' : 'baseline'}, gets a grey profile and keeps what is coded to the byte`, async () => {
      const file = await jpeg('a.jpg', { channels: 1, progressive });
      const same = wishFor({ to: 'single-channel', greyProfile: greyProfile() });
      const { format, told } = await remedyPicture(file, temp(file), same);
      assert.equal(format, 'jpeg');
      assert.match(told.join(' '), /Only the profile was embedded.*to the byte/);
      const [before, after] = [fs.readFileSync(file), fs.readFileSync(temp(file))];
      const coded = before.subarray(before.indexOf(Buffer.from([0xff, 0xdb])));
      assert.ok(after.subarray(-coded.length).equals(coded));
      const [{ profile }] = await readFacts({ file: temp(file) });
      assert.match(profile!.description, /tone curve of sRGB/);
      // as long as the numbers need not be others
      const linear = plainProfile({ description: 'linear', decode: value => value, primaries: null });
      assert.equal((await remedyPicture(file, temp(file), { ...same, greyProfile: linear })).format, 'tiff');
    });

  it('carries its metadata along as any other', async () => {
    const file = await jpeg('a.jpg');
    const tagged = await sharp(file)
      .withExif({ IFD0: { Artist: 'Nobody' } })
      .withMetadata({ orientation: 6, density: 300 })
      .jpeg()
      .toBuffer();
    fs.writeFileSync(file, tagged);
    const { from, told } = await remedyPicture(file, temp(file), wishFor({ to: 'single-channel' }));
    const [facts] = await readFacts({ file: temp(file) });
    assert.deepEqual([facts.orientation, facts.ppi, facts.format], [6, { x: 300, y: 300 }, 'jpeg']);
    assert.equal(facts.remedied?.from, from);
    assert.match(facts.profile!.description, /tone curve of sRGB/);
    assert.match(told.join(' '), /stayed as it was coded/);
  });

  it('with a little colour may stay so where JPEG is asked for, as far as the pixels bear it out', async () => {
    const wish = wishFor({ to: 'rgb-neutral', format: 'jpeg' });
    const faint = await jpeg('faint.jpg', { lean: 3 });
    const kept = await remedyPicture(faint, temp(faint), wish);
    assert.equal(kept.fromEncoding, 'rgb-toned');
    assert.match(kept.told.join(' '), /colour was taken out of its channels.*stayed as it was coded/);
    assert.ok(kept.proof.maxError > 0.02 && kept.proof.maxError <= 0.5, `${kept.proof.maxError}`);
    // its luminance is not what the red channel alone says
    const red = await remedyPicture(faint, temp(faint), {
      ...wish,
      grey: { kind: 'mix', red: 1, green: 0, blue: 0 },
    });
    assert.match(red.told.join(' '), /Coded anew as JPEG of quality 100/);
    // where nothing is said of the format, it would not be certain
    const free = await remedyPicture(faint, temp(faint), wishFor());
    assert.deepEqual([free.format, free.proof.maxError < 0.3], ['tiff', true]);
    assert.match(free.told.join(' '), /A JPEG can perhaps keep these tones/);
  });

  it('is coded anew with the quality that is named', async () => {
    const file = await jpeg('a.jpg');
    const { format, told } = await remedyPicture(
      file,
      temp(file),
      wishFor({ to: 'single-channel', quality: 90 }),
    );
    assert.equal(format, 'jpeg');
    assert.match(told.join(' '), /Coded anew as JPEG of quality 90/);
  });

  it('is the same file when it is made twice, and whether or not it was read before', async () => {
    const file = await jpeg('a.jpg');
    const [facts] = await readFacts({ file });
    const one = await remedyPicture(file, temp(file), wishFor({ to: 'single-channel' }));
    assert.deepEqual(await remedyPicture(file, temp(file), wishFor({ to: 'single-channel' }), facts), one);
  });

  it('coded so rarely that it cannot be kept is refused where it was to stay, with the way out', async () => {
    const file = await jpeg('a.jpg', { progressive: true });
    const bytes = fs.readFileSync(file);
    // a quantisation table of 16 bits that nothing uses, behind the first scan
    const scan = bytes.indexOf(Buffer.from([0xff, 0xda]));
    const behind = bytes.indexOf(Buffer.from([0xff, 0xc4]), scan);
    const table = Buffer.from([0xff, 0xdb, 0, 131, 0x13, ...new Array(64).fill([0, 1]).flat()]);
    fs.writeFileSync(file, Buffer.concat([bytes.subarray(0, behind), table, bytes.subarray(behind)]));
    const wish = wishFor({ to: 'single-channel' });
    await assert.rejects(remedyPicture(file, temp(file), wish), /coded in a rare way.*TIFF is exact/);
    assert.ok(!fs.existsSync(temp(file)));
    const anew = await remedyPicture(file, temp(file), { ...wish, format: 'jpeg' });
    assert.match(anew.told.join(' '), /Coded anew/);
  });
});

describe('whether luminance can stay', () => {
  it('is promised by the header: a JPEG that is grey or YCbCr, with the greys of sRGB', async () => {
    assert.equal(await fileStoresLuminance(await jpeg('a.jpg'), null), true);
    assert.equal(await fileStoresLuminance(await jpeg('a.jpg', { channels: 1 }), null), true);
    assert.equal(await fileStoresLuminance(await jpeg('a.jpg', { icc: 'srgb' }), null), true);
    // the same tone curve with other primaries
    assert.equal(await fileStoresLuminance(await jpeg('a.jpg', { icc: 'p3' }), null), true);
    assert.equal(await fileStoresLuminance(await jpeg('a.jpg'), greyProfile()), true);
    const linear = plainProfile({ description: 'linear', decode: value => value, primaries: null });
    assert.equal(await fileStoresLuminance(await jpeg('a.jpg'), linear), false);
    const known = (name: string) => fileStoresLuminance(path.join('test/picture/known', name), null);
    assert.equal(await known('cmyk-adobe.jpg'), false);
    assert.equal(await known('grey8.png'), false);
    assert.equal(await known('no-such-file.jpg'), false);
    const file = await jpeg('a.jpg');
    fs.writeFileSync(file, fs.readFileSync(file).subarray(0, 100));
    assert.equal(await fileStoresLuminance(file, null), false);
  });

  it('goes by what is asked for', () => {
    const colourless = greyFacts('', { encoding: 'rgb-neutral', orientation: 6 });
    const facts = { ...colourless, chroma: { ...colourless.chroma!, max: 0.4 } };
    const stays = (wish: Partial<RemedyWish>) => luminanceStays(true, facts, wishFor(wish));
    for (const wish of [{}, { to: 'single-channel' }, { bits: 8 }, { format: 'jpeg' }] as const)
      assert.equal(stays(wish), 'surely', JSON.stringify(wish));
    for (const wish of [
      { to: 'black-only' },
      { to: 'rgb-toned' },
      { below: 4 },
      { curve: Array.from({ length: 101 }, (_, L) => L) },
      { quality: 100 },
      { bits: 16 },
      { format: 'tiff' },
      { upright: true },
    ] as Partial<RemedyWish>[])
      assert.equal(stays(wish), 'no', JSON.stringify(Object.keys(wish)));
    assert.equal(luminanceStays(false, facts, wishFor()), 'no', 'the header does not promise it');
    assert.equal(
      luminanceStays(true, colourless, wishFor({ below: 4 })),
      'surely',
      'no colour could be kept',
    );
  });

  it('is certain of neutral pictures alone', () => {
    const stays = (encoding: string, wish: Partial<RemedyWish> = {}, max = 0) => {
      const facts = greyFacts('', { encoding: encoding as 'colour' });
      return luminanceStays(true, { ...facts, chroma: { ...facts.chroma!, max } }, wishFor(wish));
    };
    const mix = { grey: { kind: 'mix', red: 1, green: 0, blue: 0 } } as const;
    assert.equal(stays('single-channel', mix), 'surely');
    assert.equal(stays('rgb-neutral', {}, 0.4), 'surely');
    assert.equal(stays('rgb-neutral', mix), 'surely');
    assert.equal(stays('rgb-neutral', mix, 0.4), 'perhaps');
    assert.deepEqual(
      ['rgb-residual', 'rgb-toned', 'colour'].map(each => stays(each)),
      ['perhaps', 'perhaps', 'no'],
    );
  });

  it('of any neutral YCbCr is right: its L* is within 0.25 of its luminance’s', () => {
    // sRGB, IEC 61966-2-1; YCbCr, JFIF 1.02
    const light = (v: number) => (v <= 0.04045 * 255 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4);
    const L = (Y: number) => (Y > 216 / 24389 ? 116 * Math.cbrt(Y) - 16 : (Y * 24389) / 27);
    const stored = (v: number) => Math.min(255, Math.max(0, Math.round(v)));
    let most = 0;
    for (let y = 0; y < 256; y++)
      for (let cb = -3; cb <= 3; cb++)
        for (let cr = -3; cr <= 3; cr++) {
          const rgb = [y + 1.402 * cr, y - 0.344136 * cb - 0.714136 * cr, y + 1.772 * cb].map(stored);
          if (Math.max(...rgb) - Math.min(...rgb) > 1) continue;
          const [r, g, b] = rgb.map(light);
          most = Math.max(most, Math.abs(L(0.2126 * r + 0.7152 * g + 0.0722 * b) - L(light(y))));
        }
    assert.ok(most > 0.1 && most <= 0.25, `${most}`);
  });
});
