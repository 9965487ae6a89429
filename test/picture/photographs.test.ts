import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { readFacts } from '../../src/picture/read';
import type { Encoding } from '../../src/shared/picture';
import { need } from '../tools/need';
import { random } from './pass/random';

// Real photographs, as Debian packages them, made grey with a general image tool in the ways that people do: fetched when
// the tests run, nothing of them is kept. The expected encodings are the definitions', by how each file was made.
const PHOTOGRAPHS = '/usr/share/backgrounds/mate/nature';
const photograph = (name: string) => need(`${PHOTOGRAPHS}/${name}.jpg`, 'mate-backgrounds');
const convert = (...args: string[]) =>
  execFileSync(need('/usr/bin/convert', 'imagemagick'), args, { maxBuffer: 2 ** 26 });

const JPEG = ['-sampling-factor', '4:2:0'];
const GREY = ['-colorspace', 'Gray', '-colorspace', 'sRGB', '-type', 'TrueColor'];
/** A file name's end, what the tool is told, and what the file then is. */
type Way = [name: string, encoding: Encoding, ...args: string[]];

/** The same in JPEG at the qualities that are met, with halved chroma. */
const atQualities = (name: string, encoding: Encoding, ...args: string[]): Way[] =>
  ['60', '80', '95'].map(q => [`${name}-${q}.jpg`, encoding, ...args, ...JPEG, '-quality', q]);

const WAYS: Way[] = [
  ...atQualities('as-it-is', 'colour'),
  ...atQualities('desaturated', 'rgb-neutral', '-modulate', '100,0', '-type', 'TrueColor'),
  ...atQualities('luma', 'rgb-neutral', ...GREY),
  ...atQualities('one-channel', 'single-channel', '-colorspace', 'Gray'),
  ...atQualities('sepia', 'rgb-toned', ...GREY, '-sepia-tone', '80%'),
  ...atQualities('tinted', 'rgb-toned', ...GREY, '-fill', '#a07840', '-tint', '50'),
  ...atQualities('split', 'rgb-toned', ...GREY, '+level-colors', '#102030,#fff8ec'),
  ...atQualities('warm', 'rgb-toned', ...GREY, '-channel', 'B', '-evaluate', 'multiply', '0.97', '+channel'),
  ...atQualities(
    'film',
    'rgb-toned',
    ...GREY,
    '-channel',
    'R',
    '-gamma',
    '1.05',
    '-channel',
    'B',
    '-gamma',
    '0.96',
  ),
  ['16-bit.tif', 'rgb-neutral', ...GREY, '-depth', '16', '-define', 'tiff:bits-per-sample=16'],
  ['palette.png', 'rgb-neutral', ...GREY, '-colors', '64', '-define', 'png:color-type=3'],
  [
    'bits.tif',
    'bilevel',
    '-colorspace',
    'Gray',
    '-threshold',
    '50%',
    '-type',
    'bilevel',
    '-compress',
    'group4',
  ],
  ['lab.tif', 'lab-neutral', '-colorspace', 'Gray', '-colorspace', 'Lab', '-depth', '16'],
  ['black.tif', 'black-only', '-colorspace', 'Gray', '-colorspace', 'CMYK', '-depth', '8'],
  ['black-80.jpg', 'black-only', '-colorspace', 'Gray', '-colorspace', 'CMYK', '-quality', '80'],
  ['inks.tif', 'colour', '-colorspace', 'CMYK', '-depth', '8'],
  ['inks-80.jpg', 'colour', '-colorspace', 'CMYK', '-quality', '80'],
  ['four.tif', 'four-channel', ...separated(0.75, 0.66, 0.8), '-depth', '8'],
  ['four-80.jpg', 'four-channel', ...separated(0.75, 0.66, 0.8), '-quality', '80'],
  ['three.tif', 'three-ink', ...separated(1, 1, 0), '-depth', '8'],
];

const LEFT_OVER = atQualities('a-tenth-left', 'rgb-residual', '-modulate', '100,10');

/** Grey in four inks: so much cyan, so much magenta and yellow, black in the shadows. */
function separated(cyan: number, others: number, black: number): string[] {
  const plate = (share: number, power = 1) => [
    '(',
    '-clone',
    '0',
    '-evaluate',
    'pow',
    String(power),
    '-evaluate',
    'multiply',
    String(share),
    ')',
  ];
  return [
    '-colorspace',
    'Gray',
    '-negate',
    ...plate(cyan),
    ...plate(others),
    ...plate(others),
    ...plate(black, 2),
    '-delete',
    '0',
    '-set',
    'colorspace',
    'CMYK',
    '-combine',
  ];
}

describe('encodings of real photographs', function () {
  this.timeout(120_000);
  let folder: string;
  before(() => {
    folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-photographs-'));
  });
  after(() => fs.rmSync(folder, { recursive: true, force: true }));

  async function factsOf(name: string) {
    const [facts] = await readFacts({ file: path.join(folder, name) });
    assert.equal(facts.unreadable, null);
    return facts;
  }

  type Tone = (grey: number) => [number, number, number];
  type Size = { width: number; height: number };

  /** A photograph in grey, 750 x 500, given a tone and noise; RGB. */
  function noisy(
    name: string,
    noise: () => number,
    map: (grey: number) => number,
    tone: Tone = v => [v, v, v],
  ): [Buffer, Size] {
    const size = { width: 750, height: 500 };
    const grey = convert(
      photograph(name),
      '-resize',
      '750x500!',
      '-colorspace',
      'Gray',
      '-depth',
      '8',
      'gray:-',
    );
    assert.equal(grey.length, size.width * size.height);
    const rgb = Buffer.alloc(grey.length * 3);
    for (let i = 0; i < grey.length; i++)
      for (const [c, v] of tone(map(grey[i])).entries())
        rgb[i * 3 + c] = Math.min(255, Math.max(0, Math.round(v + noise())));
    return [rgb, size];
  }

  /** In the formats of scans, by file name. */
  async function inFormats(rgb: Buffer, size: Size): Promise<[string, Buffer][]> {
    const picture = sharp(rgb, { raw: { ...size, channels: 3 } });
    return [
      ['noise.png', await picture.clone().png({ compressionLevel: 1 }).toBuffer()],
      ['noise.tif', await picture.clone().tiff({ compression: 'lzw' }).toBuffer()],
      ['noise-420.jpg', await picture.clone().jpeg({ quality: 85, chromaSubsampling: '4:2:0' }).toBuffer()],
      ['noise-444.jpg', await picture.clone().jpeg({ quality: 95, chromaSubsampling: '4:4:4' }).toBuffer()],
    ];
  }

  // a garden, grass against the sea, a butterfly; and of one hue a storm at dusk and wet leaves, whose last tenth of colour
  // would be a tone
  const several = ['Garden', 'Dune', 'TwoWings'];
  for (const [name, ways] of [
    ...several.map(name => [name, [...WAYS, ...LEFT_OVER]] as const),
    ...['Storm', 'RainDrops'].map(name => [name, WAYS] as const),
  ])
    describe(name, () => {
      let source: string;
      before(() => {
        source = path.join(folder, `${name}.mpc`);
        convert(photograph(name), '-strip', '-resize', '1200x1200>', source);
      });
      for (const [file, encoding, ...args] of ways)
        it(`${file} is ${encoding}`, async () => {
          convert(source, ...args, path.join(folder, `${name}-${file}`));
          const { encoding: found, chroma } = await factsOf(`${name}-${file}`);
          assert.equal(found, encoding, JSON.stringify({ ...chroma, zones: undefined, places: undefined }));
        });
    });

  it('in colour are colour, those of one hue and of little colour too', async () => {
    // Wood is left out: evenly yellow all over, it is a toned picture by the definition
    const names = ['Aqua', 'Blinds', 'FreshFlower', 'GreenMeadow', 'LadyBird', 'YellowFlower'];
    for (const name of names) {
      const [facts] = await readFacts({ file: photograph(name) });
      assert.equal(facts.encoding, 'colour', name);
    }
  });

  it('of 24 megapixels with one coloured mark of 60 x 60 pixels show where it is', async () => {
    const large = ['-resize', '6000x4000!', ...GREY, '-fill', 'rgb(190,110,110)'];
    const mark = ['-draw', 'rectangle 4001,1003 4060,1062'];
    convert(
      photograph('Dune'),
      '-strip',
      ...large,
      ...mark,
      ...JPEG,
      '-quality',
      '92',
      path.join(folder, 'mark.jpg'),
    );
    const { encoding, chroma } = await factsOf('mark.jpg');
    assert.equal(encoding, 'rgb-residual');
    assert.equal(chroma!.places.length, 1);
    const [{ x, y, width, height, max }] = chroma!.places;
    // whole blocks, and one more around where the codec smears
    assert.ok(x <= 4001 && x > 4001 - 24 && x + width >= 4061 && x + width < 4061 + 24, `${x} + ${width}`);
    assert.ok(y <= 1003 && y > 1003 - 24 && y + height >= 1063 && y + height < 1063 + 24, `${y} + ${height}`);
    assert.ok(max > 20, `${max}`);
  });

  it('with a cast that changes from corner to corner are neither toned nor colour', async () => {
    const overlay = ['(', '+clone', '-sparse-color', 'bilinear', '0,0 #808080 1199,799 #8f8268', ')'];
    convert(
      photograph('Garden'),
      '-strip',
      '-resize',
      '1200x800!',
      ...GREY,
      ...overlay,
      '-compose',
      'Overlay',
      '-composite',
      ...JPEG,
      '-quality',
      '85',
      path.join(folder, 'uneven.jpg'),
    );
    assert.equal((await factsOf('uneven.jpg')).encoding, 'rgb-residual');
  });

  it('scanned, with zero-mean noise of 6/255 in each channel, are residual in name with nothing to see', async () => {
    const next = random(77);
    const uniform = () => next() * 12 - 6;
    const [picture, size] = noisy('Dune', uniform, v => v * 0.9 + 10);
    for (const [file, bytes] of await inFormats(picture, size)) {
      fs.writeFileSync(path.join(folder, file), bytes);
      const { encoding, chroma } = await factsOf(file);
      assert.equal(encoding, 'rgb-residual', file);
      assert.ok(chroma!.maxPixel > 3, `${file}: ${chroma!.maxPixel}`);
      assert.ok(chroma!.share < 0.001, `${file}: ${chroma!.share}`);
      assert.deepEqual(chroma!.places, [], file);
    }
  });

  describe('beneath noise keep the tone that they have, and get none from it', () => {
    // the noise comes to each channel by itself, in whole 8-bit steps, and is cut off at black and white
    const next = random(4242);
    const gauss = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
    const kinds: [string, () => number][] = [
      ['uniform within 6', () => next() * 12 - 6],
      ['Gaussian, SD 3', () => gauss() * 3],
      ['Gaussian, SD 6', () => gauss() * 6],
    ];
    /** R, G, B by a grey of 0-255; the largest C* that this comes to, by the sRGB formulae: 0, 1.3, 2.1, 2.1. */
    const tones: [string, Encoding, Tone][] = [
      ['grey', 'rgb-residual', v => [v, v, v]],
      ['faintly warm', 'rgb-toned', v => [v + 0.8, v, v - 1.4]],
      ['with a cast', 'rgb-toned', v => [v + 1.6, v, v - 2.5]],
      ['split', 'rgb-toned', v => [v + (v - 128) / 42, v, v - (v - 128) / 42]],
    ];
    for (const name of ['Garden', 'Storm', 'FreshFlower'])
      for (const [kind, noise] of kinds)
        for (const [tone, encoding, colour] of tones)
          it(`${name}, ${tone}, ${kind}`, async () => {
            const [picture, size] = noisy(name, noise, v => v, colour);
            for (const [file, bytes] of await inFormats(picture, size)) {
              fs.writeFileSync(path.join(folder, file), bytes);
              const { encoding: found, chroma } = await factsOf(file);
              // of small noise and a tone at once a codec that halves chroma may keep less than an 8-bit step
              if (encoding === 'rgb-residual' || !file.endsWith('.jpg')) assert.equal(found, encoding, file);
              if (encoding === 'rgb-toned') continue;
              for (const { L, a, b } of chroma!.zones)
                assert.ok(Math.hypot(a, b) < 0.6, `${file} at L* ${L}: ${a}, ${b}`);
            }
          });
  });

  it('have the extremes and means that the tool itself tells', async () => {
    const file = path.join(folder, 'luma.jpg');
    convert(photograph('Garden'), ...GREY, ...JPEG, file);
    const format = '%[fx:minima*255] %[fx:maxima*255] %[fx:mean*255]\n';
    const text = convert(file, '-colorspace', 'Gray', '-format', format, 'info:').toString();
    const [min, max, mean] = text.trim().split(' ').map(Number);
    const { levels } = await factsOf('luma.jpg');
    for (const level of levels) {
      assert.deepEqual([level.min, level.max], [min, max]);
      assert.ok(Math.abs(level.mean - mean) < 0.01, `${level.mean}, not ${mean}`);
    }
  });
});
