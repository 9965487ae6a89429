import assert from 'node:assert/strict';
import path from 'node:path';
import sharp from 'sharp';
import { temporaryFolder, write } from '../book/support/folder';
import { random } from '../picture/pass/random';
import { check, findings } from './check';
import { convert, photograph } from './photographs';

const GREY = '-colorspace Gray -colorspace sRGB -type TrueColor';

describe('colour left in a grey photograph', function () {
  this.timeout(120_000);

  it('is found and placed in 24 megapixels, down to one mark of 60 x 60', async () => {
    const folder = temporaryFolder({ 'evengrey.json': '{"process": "silver-halide"}' });
    const mark = { x: 2345, y: 3210, size: 60 };
    const drawn = ['-fill', 'rgb(150,110,110)', '-draw', 'rectangle 2345,3210 2404,3269'];
    convert([photograph('LadyBird')], `-strip -resize 6000x4000! ${GREY}`, drawn, '-quality 90', [
      path.join(folder, 'scan.jpg'),
    ]);
    const [{ encoding, chroma, ...told }] = (await check(folder)).pictures;
    assert.equal(encoding, 'rgb-residual');
    assert.equal(chroma.places.length, 1);
    const [place] = chroma.places;
    const near = (told: number, made: number) =>
      assert.ok(Math.abs(told - made) <= 24, `${told}, made ${made}`);
    near(place.x, mark.x);
    near(place.y, mark.y);
    near(place.x + place.width, mark.x + mark.size);
    near(place.y + place.height, mark.y + mark.size);
    assert.deepEqual(
      told.findings.filter(f => f.severity === 'warning').map(f => f.rule),
      ['residual-chroma'],
    );
  });

  it('is no fault where it is noise of 6/255 that averages out, as a scanner leaves it', async () => {
    const folder = temporaryFolder({ 'evengrey.json': '{"process": "silver-halide"}' });
    const [width, height] = [1200, 800];
    const grey = convert(
      [photograph('LadyBird')],
      `-resize ${width}x${height}! -colorspace Gray -depth 8 gray:-`,
    );
    assert.equal(grey.length, width * height);
    const next = random(5);
    const noisy = Buffer.alloc(grey.length * 3);
    // so far from both ends that nothing is cut, which would leave a cast
    for (let i = 0; i < noisy.length; i++)
      noisy[i] = 10 + Math.round(grey[Math.floor(i / 3)] * 0.9) + Math.round((next() * 2 - 1) * 6);
    const picture = sharp(noisy, { raw: { width, height, channels: 3 } });
    await picture.clone().tiff({ compression: 'lzw' }).toFile(path.join(folder, 'scan.tif'));
    await picture.clone().jpeg({ quality: 90 }).toFile(path.join(folder, 'scan.jpg'));
    const report = await check(folder);
    assert.deepEqual(
      report.pictures.map(({ encoding }) => encoding),
      ['rgb-residual', 'rgb-residual'],
    );
    assert.deepEqual(
      findings(report).filter(line => !line.endsWith(' note')),
      [],
    );
  });

  it('is none where it cannot be seen: under alpha 0', async () => {
    const folder = temporaryFolder({ 'evengrey.json': '{"process": "silver-halide"}' });
    const [width, height] = [400, 300];
    const grey = convert(
      [photograph('Dune')],
      `-resize ${width}x${height}! -colorspace Gray -depth 8 gray:-`,
    );
    const pixels = Buffer.alloc(width * height * 4);
    for (let i = 0; i < width * height; i++) {
      const hidden = i % width < 100;
      pixels.set(hidden ? [255, 0, 128, 0] : [grey[i], grey[i], grey[i], 255], i * 4);
    }
    const raw = { width, height, channels: 4 as const };
    write(folder, {
      'cut-out.png': await sharp(pixels, { raw }).png().toBuffer(),
      'cut-out.tif': await sharp(pixels, { raw }).tiff({ compression: 'lzw' }).toBuffer(),
    });
    const report = await check(folder);
    for (const { encoding, chroma } of report.pictures)
      assert.deepEqual([encoding, chroma.max, chroma.places], ['rgb-neutral', 0, []]);
    assert.deepEqual(
      findings(report).filter(line => !line.startsWith('book: likely-tint note')),
      [],
    );
  });
});
