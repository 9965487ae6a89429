import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { plainProfile } from '../../src/colour/icc/write';
import { gammaCurve } from '../../src/colour/tone-curves';
import { sharp } from '../../src/picture/decode-sharp';
import { blackLightness } from '../../src/picture/meaning/press';
import { readFacts } from '../../src/picture/read';
import { greyPlane } from '../../src/remedy/grey';
import { remedyPicture } from '../../src/remedy/picture';
import { RemedyError } from '../../src/remedy/remedy-error';
import { readPicture } from '../../src/remedy/source';
import { blackPointScaled } from '../../src/remedy/tone/black-point';
import { curveAt } from '../../src/remedy/tone/curve';
import type { RemedyWish } from '../../src/shared/remedy';
import { wishFor } from './support';

const KNOWN = path.join('test', 'picture', 'known');
const known = (name: string) => path.join(KNOWN, name);

/** Every layout that can be read and is one picture, by name. */
const LAYOUTS = fs
  .readdirSync(KNOWN)
  .filter(name => !/\.(py|psd|bmp|heic|jp2|ppm)$|^pages/.test(name))
  .sort();

let folder: string;
const temp = () => path.join(folder, 'result.tmp');
const remedied = (name: string, change: Partial<RemedyWish> = {}) =>
  remedyPicture(known(name), temp(), wishFor(change));

/** L* of every pixel as the result and the source mean it. */
async function lightnessOf(file: string): Promise<number[]> {
  const { samples, reading } = await readPicture(file);
  const { index, lightness } = greyPlane(samples, reading.meaning, { kind: 'lightness' });
  return Array.from(index, i => lightness[i]);
}

describe('one picture remedied', () => {
  before(() => {
    folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-remedy-'));
  });
  after(() => fs.rmSync(folder, { recursive: true }));

  for (const to of ['rgb-neutral', 'single-channel', 'black-only'] as const)
    it(`from every layout that can be read becomes ${to}, found so when it is read again, L* within 0.5`, async () => {
      for (const name of LAYOUTS) {
        const { proof, format } = await remedied(name, { to });
        const [facts, ...others] = await readFacts({ file: temp() });
        assert.equal(others.length, 0);
        assert.equal(facts.encoding, to, name);
        assert.equal(proof.encoding, to, name);
        assert.ok(proof.maxError < 0.5, `${name}: ${format}, L* off by ${proof.maxError}`);
        assert.ok(proof.meanError <= proof.maxError);
        const bytes = fs.readFileSync(temp());
        assert.equal(proof.sha256, createHash('sha256').update(bytes).digest('hex'), name);
        assert.equal(proof.bytes, bytes.length, name);
        assert.equal(facts.sha256, proof.sha256, name);
      }
    });

  it('has a proof that the pixels bear out: L* of the source, by another count', async () => {
    const { proof } = await remedied('rgb8.tif');
    const [before, after] = [await lightnessOf(known('rgb8.tif')), await lightnessOf(temp())];
    const errors = before.map((L, i) => Math.abs(L - after[i]));
    assert.ok(Math.abs(Math.max(...errors) - proof.maxError) < 1e-4);
    assert.ok(Math.max(...errors) > 0.01, 'nothing was rounded');
  });

  it('tells how far a method moved lightness on purpose, beside what it is off the plan', async () => {
    const grey = { kind: 'mix', red: 1, green: 0, blue: 0 } as const;
    const { proof, moved } = await remedied('rgb8.tif', { grey });
    const [before, after] = [await lightnessOf(known('rgb8.tif')), await lightnessOf(temp())];
    const moves = before.map((L, i) => Math.abs(L - after[i]));
    assert.equal(moved!.method, '1,0,0');
    assert.ok(Math.max(...moves) > 10, 'the method moves little');
    assert.ok(Math.abs(moved!.maxMove - Math.max(...moves)) < 0.5, `${moved!.maxMove}`);
    const mean = moves.reduce((sum, move) => sum + move) / moves.length;
    assert.ok(Math.abs(moved!.meanMove - mean) < 0.1, `${moved!.meanMove}, not ${mean}`);
    assert.ok(proof.maxError < 0.5);
    assert.equal((await remedied('rgb8.tif')).moved, null);
    assert.equal((await remedied('grey8.tif', { grey })).moved, null, 'grey is moved by no mix');
  });

  it('goes by what was read before, as long as that is the same picture', async () => {
    const [facts] = await readFacts({ file: known('rgb8.tif') });
    const fromKnown = async (change: object) => {
      const { fromEncoding } = await remedyPicture(known('rgb8.tif'), temp(), wishFor(), {
        ...facts,
        ...change,
      });
      return fromEncoding;
    };
    assert.equal(await fromKnown({ encoding: 'rgb-toned' }), 'rgb-toned');
    assert.equal(await fromKnown({ encoding: 'rgb-toned', sha256: 'another' }), facts.encoding);
  });

  it('keeps its format and depth, or says why not', async () => {
    const of = async (name: string, change: Partial<RemedyWish> = {}) => {
      const { format, bits, told } = await remedied(name, change);
      return { kind: `${format} ${bits}`, told: told.join(' ') };
    };
    assert.equal((await of('rgb16.tif')).kind, 'tiff 16');
    assert.equal((await of('grey16.png')).kind, 'png 16');
    assert.equal((await of('grey1.tif')).kind, 'tiff 8');
    assert.equal((await of('rgb-float.tif')).kind, 'tiff 16');
    assert.equal((await of('cmyk-adobe.jpg', { format: 'jpeg' })).kind, 'jpeg 8');
    const inks = await of('grey8.png', { to: 'black-only' });
    assert.equal(inks.kind, 'tiff 8');
    assert.match(inks.told, /A PNG cannot hold inks/);
    const narrow = await of('rgb16.tif', { format: 'jpeg' });
    assert.equal(narrow.kind, 'jpeg 8');
    assert.match(
      narrow.told,
      /8 bits a channel; the source has 16.*as JPEG of quality 100: the tones were rounded/,
    );
    assert.equal((await of('rgb8.tif', { bits: 16 })).kind, 'tiff 16');
  });

  it('tells of tones that 8 bits cannot hold by a linear grey profile, and takes 16 unasked', async () => {
    const linear = plainProfile({ description: 'Linear', decode: v => v, primaries: null });
    const wish = { to: 'single-channel', format: 'tiff', greyProfile: linear } as const;
    const name = 'grey8.png';
    const eight = await remedied(name, { ...wish, bits: 8 });
    assert.ok(eight.proof.maxError > 0.5, `${eight.proof.maxError}`);
    assert.match(eight.told.join(' '), /off by up to L\* \d.*--bits 16/);
    const left = await remedied(name, wish);
    assert.equal(left.bits, 16);
    assert.ok(left.proof.maxError < 0.05, `${left.proof.maxError}`);
    assert.doesNotMatch(left.told.join(' '), /off by/);
  });

  it('writes no JPEG by a linear grey profile, whose shadows would fall apart in 8 bits', async () => {
    const linear = plainProfile({ description: 'Linear', decode: v => v, primaries: null });
    const wish = { to: 'single-channel', format: 'jpeg', greyProfile: linear } as const;
    await assert.rejects(
      remedied('grey8.png', wish),
      /^RemedyError: Its shadows would print as steps: .* up to L\* 3\.5 apart\. Have it written as TIFF or PNG/,
    );
    assert.ok(!fs.existsSync(temp()));
    const usual = plainProfile({ description: 'Grey', decode: gammaCurve(1.8).decode, primaries: null });
    assert.equal((await remedied('grey8.png', { ...wish, greyProfile: usual })).format, 'jpeg');
  });

  it('says what it took the numbers for, and how black ink became black', async () => {
    const told = (await remedied('cmyk8.tif')).told.join(' ');
    assert.match(told, /the inks were read as on grade 1 coated paper/);
    assert.match(told, /sRGB, and its profile is embedded/);
    assert.match(
      (await remedied('grey8.tif', { to: 'single-channel' })).told.join(' '),
      /numbers are those of sRGB's greys/,
    );
    assert.match((await remedied('cmyk8-spot.tif')).told.join(' '), /spot ink/i);
  });

  it('from black ink alone to R = G = B and back has the same amounts', async () => {
    const ink = path.join(folder, 'ink.tif');
    await remedied('grey8.tif', { to: 'black-only' });
    fs.copyFileSync(temp(), ink);
    const first = await readPicture(ink);
    const rgb = path.join(folder, 'rgb.tif');
    const opened = await remedyPicture(ink, rgb, wishFor({ bits: 16 }));
    assert.equal(opened.fromEncoding, 'black-only');
    assert.match(opened.told.join(' '), /Full black ink, L\* 16 on its paper, became R = G = B = 0/);
    await remedyPicture(rgb, temp(), wishFor({ to: 'black-only', bits: 8 }));
    assert.deepEqual((await readPicture(temp())).samples.data, first.samples.data);
  });

  it('follows the curve, scaled into black ink', async () => {
    const curve = Array.from({ length: 101 }, (_, L) => 10 + 0.9 * L);
    await remedied('grey16.tif', { to: 'black-only', curve });
    const scaled = blackPointScaled(0, blackLightness(1));
    const before = await lightnessOf(known('grey16.tif'));
    (await lightnessOf(temp())).forEach((L, i) => {
      assert.ok(Math.abs(L - scaled(curveAt(curve, before[i]))) < 0.05, `${L}`);
    });
  });

  it('keeps alpha in PNG and TIFF, lays it on white where the result has none', async () => {
    await remedied('rgb-alpha8.png');
    const [{ samples: was }, { samples: is }] = [
      await readPicture(known('rgb-alpha8.png')),
      await readPicture(temp()),
    ];
    assert.equal(is.alpha, true);
    for (let i = 3; i < was.data.length; i += 4) assert.equal(is.data[i], was.data[i]);
    const { told } = await remedied('rgb-alpha8.png', { format: 'jpeg' });
    assert.match(told.join(' '), /transparent was laid on white/);
    const flat = (await readPicture(temp())).samples;
    assert.equal(flat.alpha, false);
    for (let i = 0; i < flat.data.length; i++)
      if (was.data[((i - (i % 3)) / 3) * 4 + 3] === 0) assert.ok(flat.data[i] > 250);
  });

  it('lies as it lay with its orientation tag, or is turned upright without it', async () => {
    const size = async () => {
      const { header } = await readPicture(temp());
      return [header.width, header.height, header.orientation];
    };
    const { header } = await readPicture(known('turned.tif'));
    assert.match((await remedied('turned.tif')).told.join(' '), /orientation tag was kept/);
    assert.deepEqual(await size(), [header.width, header.height, header.orientation]);
    assert.match((await remedied('turned.tif', { upright: true })).told.join(' '), /turned upright/);
    const [width, height, orientation] = await size();
    const shown = await sharp(known('turned.tif')).autoOrient().toBuffer({ resolveWithObject: true });
    assert.deepEqual([width, height, orientation], [shown.info.width, shown.info.height, 1]);
  });

  it('keeps its own tone, or an even one, or a stated one', async () => {
    const toned = path.join(folder, 'toned.png');
    // warm shadows, cool lights, and a red mark
    const ramp = Uint8Array.from({ length: 256 * 64 * 3 }, (_, i) => {
      const v = Math.floor(i / 3) % 256;
      const lean = (v - 128) / 10;
      const mark = v > 100 && v < 110 && Math.floor(i / 768) < 6;
      return Math.min(255, Math.max(0, [v - lean + (mark ? 60 : 0), v, v + lean][i % 3]));
    });
    await sharp(ramp, { raw: { width: 256, height: 64, channels: 3 } })
      .png()
      .toFile(toned);
    const zonesOf = async (tone: RemedyWish['tone']) => {
      const { proof } = await remedyPicture(toned, temp(), wishFor({ to: 'rgb-toned', tone }));
      const [facts] = await readFacts({ file: temp() });
      assert.ok(proof.maxError < 0.5, `${proof.maxError}`);
      return facts.chroma!;
    };
    const own = await zonesOf({ kind: 'own' });
    const at = (chroma: typeof own, L: number) =>
      chroma.zones.reduce((x, y) => (Math.abs(y.L - L) < Math.abs(x.L - L) ? y : x));
    assert.ok(
      at(own, 25).b - at(own, 75).b > 5,
      `the tone no longer turns: ${at(own, 25).b}, ${at(own, 75).b}`,
    );
    assert.ok(own.maxPixel < 3, `the mark is still there: ${own.maxPixel}`);
    const even = await zonesOf({ kind: 'even' });
    assert.ok(Math.abs(at(even, 25).b - at(even, 75).b) < 1, 'the tone still turns');
    const stated = await zonesOf({ kind: 'stated', a: 2, b: 6 });
    for (const L of [25, 50, 75])
      assert.ok(Math.hypot(at(stated, L).a - 2, at(stated, L).b - 6) < 0.8, `${L}`);
  });

  it('says so where a tone is too faint to count as one', async () => {
    const { proof, told } = await remedied('grey16.tif', {
      to: 'rgb-toned',
      tone: { kind: 'stated', a: 0.3, b: 0 },
    });
    assert.notEqual(proof.encoding, 'rgb-toned');
    assert.match(told.join(' '), /too faint to count as one/);
  });

  it('keeps strong colour where only faint colour is to go', async () => {
    const { told, proof } = await remedied('rgb8.tif', { below: 5 });
    assert.ok(proof.maxError < 0.5, `${proof.maxError}`);
    assert.match(told.join(' '), /Colour that is stronger was kept/);
  });

  it('is the same to the byte when it is made twice', async () => {
    for (const name of ['rgb8.tif', 'rgb-alpha8.png', 'cmyk-adobe.jpg']) {
      const [one, other] = [await remedied(name), await remedied(name)];
      assert.deepEqual(one, other);
    }
  });

  it('is held against what was written: another picture in its place is no result, and is removed', async () => {
    const other = path.join(folder, 'other.tif');
    await remedyPicture(
      known('rgb8.tif'),
      other,
      wishFor({ grey: { kind: 'mix', red: 1, green: 0, blue: 0 } }),
    );
    const bytes = fs.readFileSync(other);
    const { writeSync } = fs;
    fs.writeSync = ((fd: number) => writeSync(fd, bytes) && Number.POSITIVE_INFINITY) as typeof fs.writeSync;
    try {
      await assert.rejects(
        remedied('rgb8.tif'),
        (error: Error) =>
          error instanceof RemedyError && /did not read back as it was written/.test(error.message),
      );
    } finally {
      fs.writeSync = writeSync;
    }
    assert.ok(!fs.existsSync(temp()));
  });

  it('passes on what the file system says, and leaves nothing half written', async () => {
    const { writeSync } = fs;
    fs.writeSync = (() => {
      throw Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });
    }) as typeof fs.writeSync;
    try {
      await assert.rejects(remedied('rgb8.tif'), { code: 'ENOSPC' });
    } finally {
      fs.writeSync = writeSync;
    }
    assert.ok(!fs.existsSync(temp()));
  });

  it('leaves nothing behind where it fails, and the source as it was', async () => {
    const before = fs.readFileSync(known('rgb8.tif'));
    const there = path.join(folder, 'no-such-folder', 'x.tmp');
    await assert.rejects(remedyPicture(known('rgb8.tif'), there, wishFor()), /ENOENT/);
    await assert.rejects(
      remedied('rgb8.tif', { grey: { kind: 'mix', red: 0, green: 0, blue: 0 } }),
      RemedyError,
    );
    await assert.rejects(remedied('pages.tif'), RemedyError);
    assert.deepEqual(fs.readFileSync(known('rgb8.tif')), before);
  });
});
