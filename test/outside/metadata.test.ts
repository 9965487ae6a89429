import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { bufferSource, readHeader } from '../../src/picture/header';
import { fileBytes } from '../../src/remedy/file';
import { carriedFrom, withRecord } from '../../src/remedy/metadata';
import type { RemedyFormat } from '../../src/shared/remedy';
import { bare, stored } from '../remedy/file/stored';
import { exiftool, SOURCES, type SourceFormat, taggedPictures, tagsOf } from '../remedy/metadata/tagged';

// Metadata before and after, compared by exiftool (Debian's libimage-exiftool-perl): another program writes the tags into
// the source and reads them in what we write.

const FROM = 'ab'.repeat(32);
const TARGETS = ['jpeg', 'png', 'tiff'] as const;

/** Groups that hold a person's and a camera's words; what IFD0 says of TIFF's own pixels is left out below. */
const KEPT_GROUP = /^(IFD0|ExifIFD|GPS|IPTC|XMP-\w+):/;
const TIFF_PIXELS =
  /^IFD0:(ImageWidth|ImageHeight|BitsPerSample|Compression|PhotometricInterpretation|Strip\w+|SamplesPerPixel|RowsPerStrip|PlanarConfiguration|Predictor|SampleFormat|YCbCrPositioning)$/;

/** What must not be said any more, or must be said otherwise, of a grey picture in R, G, B with sRGB's numbers. */
function expected(key: string, value: unknown, source: SourceFormat, to: RemedyFormat): unknown {
  switch (key) {
    case 'ExifIFD:ColorSpace':
    case 'XMP-exif:ColorSpace':
      return 'sRGB';
    case 'ExifIFD:ExifImageWidth':
      return to === 'tiff' ? undefined : 67;
    case 'ExifIFD:ExifImageHeight':
      return to === 'tiff' ? undefined : 45;
    case 'ExifIFD:ComponentsConfiguration':
      return to === 'jpeg' ? value : undefined;
    case 'XMP-photoshop:ColorMode':
      return 'RGB';
    case 'XMP-dc:Format':
      return `image/${to}`;
    case 'XMP-xmpMM:InstanceID':
      return undefined;
    case 'XMP-xmpMM:History':
      return [
        ...(value as unknown[]),
        {
          Action: 'converted',
          Parameters: 'to rgb-neutral; by lightness',
          SoftwareAgent: JSON.parse(fs.readFileSync('package.json', 'utf8')).version.replace(
            /^/,
            'evengrey ',
          ),
        },
      ];
    case 'IFD0:Orientation':
    case 'XMP-tiff:Orientation':
      // an AVIF is turned by its container, and its EXIF must not turn it again (MIAF, ISO/IEC 23000-22)
      return source === 'avif' ? 'Horizontal (normal)' : value;
    default:
      return value;
  }
}

describe('metadata, by exiftool', () => {
  let folder: string;
  let files: Record<SourceFormat, string>;
  const out = (source: string, to: string) => path.join(folder, `${source}-to.${to}`);

  before(async function () {
    this.timeout(60_000);
    folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-metadata-'));
    files = await taggedPictures(folder);
    for (const source of SOURCES) {
      const bytes = fs.readFileSync(files[source]);
      const carried = withRecord(carriedFrom(bytes, readHeader(bufferSource(bytes))), {
        from: FROM,
        to: 'rgb-neutral',
        toned: false,
        parameters: 'by lightness',
      });
      for (const to of TARGETS)
        fs.writeFileSync(out(source, to), (await fileBytes(stored('rgb'), to, 95, carried)).bytes);
    }
  });
  after(() => fs.rmSync(folder, { recursive: true }));

  for (const source of SOURCES)
    it(`lose nothing from ${source} to any format, and say nothing false`, function () {
      this.timeout(30_000);
      const [before, ...after] = tagsOf([files[source], ...TARGETS.map(to => out(source, to))]);
      const kept = Object.keys(before).filter(key => KEPT_GROUP.test(key) && !TIFF_PIXELS.test(key));
      // AVIF and WebP have no place for IPTC, so exiftool wrote none
      const iptc = source === 'avif' || source === 'webp' ? 0 : 5;
      assert.ok(kept.length > 40 + iptc, `${kept.length} tags to compare`);
      TARGETS.forEach((to, i) => {
        for (const key of kept)
          assert.deepEqual(
            after[i][key],
            expected(key, before[key], source, to),
            `${source} to ${to}: ${key}`,
          );
        assert.deepEqual(after[i]['XMP-xmpMM:DerivedFrom'], {
          InstanceID: `nih:sha-256;${FROM}`,
          DocumentID: 'abc',
        });
      });
    });

  it('say one density in every place', function () {
    this.timeout(30_000);
    for (const tags of tagsOf(SOURCES.flatMap(source => TARGETS.map(to => out(source, to))))) {
      const what = String(tags.SourceFile);
      assert.deepEqual(
        [tags['IFD0:XResolution'], tags['IFD0:YResolution'], tags['IFD0:ResolutionUnit']],
        [240, 240, 'inches'],
        what,
      );
      if (what.endsWith('.jpeg'))
        assert.deepEqual([tags['JFIF:XResolution'], tags['JFIF:ResolutionUnit']], [240, 'inches'], what);
      if (what.endsWith('.png')) assert.equal(tags['PNG-pHYs:PixelsPerUnitX'], 9449, what);
    }
  });

  it('keep the comment and texts where the format has a place for them', function () {
    this.timeout(30_000);
    const [jpeg, png] = tagsOf([out('jpeg', 'jpeg'), out('jpeg', 'png')]);
    assert.equal(jpeg['File:Comment'], 'hello');
    assert.equal(png['PNG:Comment'], 'hello');
    const comments = exiftool('-a', '-s3', '-Comment', out('png', 'jpeg')).trim().split('\n');
    assert.deepEqual(comments.sort(), ['Title: Title of its own', 'hello']);
  });

  it('keep XMP that is too long for one segment of a JPEG, by an extension', async function () {
    this.timeout(30_000);
    const long = path.join(folder, 'long.tiff');
    fs.copyFileSync(files.tiff, long);
    const words = Array.from({ length: 30_000 }, (_, i) => `word${i}`).join(' ');
    fs.writeFileSync(path.join(folder, 'words'), words);
    exiftool('-q', '-m', '-overwrite_original', `-XMP-dc:Description<=${path.join(folder, 'words')}`, long);
    const bytes = fs.readFileSync(long);
    const carried = carriedFrom(bytes, readHeader(bufferSource(bytes)));
    const { bytes: jpeg, told } = await fileBytes(stored('grey'), 'jpeg', 90, carried);
    const file = path.join(folder, 'long.jpeg');
    fs.writeFileSync(file, jpeg);
    const [tags] = tagsOf([file]);
    assert.deepEqual([tags['XMP-dc:Description'], tags['XMP-dc:Title'], told], [words, 'Gate', []]);
    const again = carriedFrom(jpeg, readHeader(bufferSource(jpeg)));
    assert.ok(again.xmp?.includes('word29999'), 'and read by ourselves');
  });

  it('find no fault in what is written', function () {
    this.timeout(30_000);
    // of a TIFF, it knows compressions of TIFF 6.0 alone, IPTC as numbers alone, and misses a GPS tag of another standard
    const known =
      /Invalid value for IFD0 tag 0x0103|Non-standard format \(undef\) for IFD0 0x83bb|Missing required TIFF GPS tag/;
    for (const source of SOURCES)
      for (const to of TARGETS) {
        const warnings = exiftool('-validate', '-warning', '-error', '-a', '-s', out(source, to))
          .split('\n')
          .filter(line => /^(Warning|Error)/.test(line) && !known.test(line));
        assert.deepEqual(warnings, [], `${source} to ${to}`);
      }
  });

  it('of inks name their density by EXIF, and uncalibrated colours', async function () {
    this.timeout(30_000);
    const bytes = fs.readFileSync(files.jpeg);
    const carried = carriedFrom(bytes, readHeader(bufferSource(bytes)));
    const tagged = path.join(folder, 'inks.jpeg');
    const plain = path.join(folder, 'plain.jpeg');
    fs.writeFileSync(tagged, (await fileBytes(stored('cmyk'), 'jpeg', 95, carried)).bytes);
    const density = { x: [300, 1], y: [300, 1], unit: 'inch' } as const;
    fs.writeFileSync(plain, (await fileBytes(stored('cmyk'), 'jpeg', 95, bare({ density }))).bytes);
    const [inks, alone] = tagsOf([tagged, plain]);
    assert.equal(inks['ExifIFD:ColorSpace'], 'Uncalibrated');
    assert.equal(inks['XMP-photoshop:ColorMode'], 'CMYK');
    assert.equal(inks['InteropIFD:InteropIndex'], undefined);
    assert.deepEqual([alone['IFD0:XResolution'], alone['JFIF:XResolution']], [300, undefined]);
  });
});
