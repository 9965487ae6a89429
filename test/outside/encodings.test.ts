import assert from 'node:assert/strict';
import path from 'node:path';
import { temporaryFolder } from '../book/support/folder';
import { check } from './check';
import { convert, photograph } from './photographs';

// The same photograph in every encoding, made by another program, from file to report. What each file is follows from
// how it was made.
const HALVED = '-sampling-factor 4:2:0 -quality';
const GREY = '-colorspace Gray -colorspace sRGB -type TrueColor';
const PART = '-region 33%x33%+60+40 -fill #b07030 -colorize 10 +region';

/** File -> encoding, bits, channels, how it is made. */
const WAYS: Record<string, [encoding: string, bits: number, channels: number, how: string]> = {
  'colour-60.jpg': ['colour', 8, 3, `${HALVED} 60`],
  'colour.tif': ['colour', 8, 3, '-depth 8'],
  'one.jpg': ['single-channel', 8, 1, '-colorspace Gray -quality 80'],
  'one.png': ['single-channel', 8, 1, '-grayscale Rec601Luma -depth 8'],
  'one.tif': ['single-channel', 8, 1, '-grayscale Rec709Luminance -depth 8'],
  'one-16.tif': ['single-channel', 16, 1, '-colorspace Gray -depth 16'],
  'one-16.png': ['single-channel', 16, 1, '-colorspace Gray -depth 16'],
  'green-alone.jpg': ['single-channel', 8, 1, '-channel G -separate +channel -quality 90'],
  'neutral-60.jpg': ['rgb-neutral', 8, 3, `${GREY} ${HALVED} 60`],
  'neutral-95.jpg': ['rgb-neutral', 8, 3, `${GREY} ${HALVED} 95`],
  'desaturated-60.jpg': ['rgb-neutral', 8, 3, `-modulate 100,0 -type TrueColor ${HALVED} 60`],
  'neutral.tif': ['rgb-neutral', 8, 3, `${GREY} -depth 8 -compress LZW`],
  'neutral-16.tif': ['rgb-neutral', 16, 3, `${GREY} -depth 16 -compress Zip`],
  'neutral.png': ['rgb-neutral', 8, 3, `${GREY} -depth 8 -define png:color-type=2`],
  'sepia-60.jpg': ['rgb-toned', 8, 3, `${GREY} -sepia-tone 80% ${HALVED} 60`],
  'sepia.png': ['rgb-toned', 8, 3, `${GREY} -sepia-tone 75% -depth 8`],
  'cool.tif': ['rgb-toned', 8, 3, `${GREY} -fill #6080a0 -tint 60 -depth 8`],
  'split-95.jpg': ['rgb-toned', 8, 3, `${GREY} +level-colors #181028,#fffbf0 ${HALVED} 95`],
  'cast-in-part-60.jpg': ['rgb-residual', 8, 3, `${GREY} ${PART} ${HALVED} 60`],
  'cast-in-part-95.jpg': ['rgb-residual', 8, 3, `${GREY} ${PART} ${HALVED} 95`],
  'cast-in-part.png': ['rgb-residual', 8, 3, `${GREY} ${PART} -depth 8`],
  'black.tif': ['black-only', 8, 4, '-colorspace Gray -colorspace CMYK -type ColorSeparation -depth 8'],
  'black.jpg': ['black-only', 8, 4, '-colorspace Gray -colorspace CMYK -type ColorSeparation -quality 85'],
  'four.tif': ['four-channel', 8, 4, `${inks(0.75, 0.66, 0.8)} -depth 8`],
  'four.jpg': ['four-channel', 8, 4, `${inks(0.6, 0.5, 0.9)} -quality 85`],
  'three.tif': ['three-ink', 8, 4, `${inks(1, 0.88, 0)} -depth 8`],
  'inks.tif': ['colour', 8, 4, '-colorspace CMYK -depth 8'],
  'bits.tif': ['bilevel', 1, 1, '-colorspace Gray -ordered-dither h8x8a -type bilevel -compress group4'],
  'bits.png': ['bilevel', 1, 1, '-colorspace Gray -threshold 50% -type bilevel'],
};

/** Grey in four inks: so much cyan, so much magenta and yellow, black in the shadows. */
function inks(cyan: number, others: number, black: number): string {
  const plate = (share: number, power = 1) =>
    `( -clone 0 -evaluate pow ${power} -evaluate multiply ${share} )`;
  const plates = [plate(cyan), plate(others), plate(others), plate(black, 2)].join(' ');
  return `-colorspace Gray -negate ${plates} -delete 0 -set colorspace CMYK -combine`;
}

describe('photographs from file to report', function () {
  this.timeout(120_000);

  for (const name of ['LadyBird', 'FreshFlower', 'GreenMeadow', 'YellowFlower'])
    it(`${name}: its encodings are told apart`, async () => {
      const folder = temporaryFolder();
      const source = path.join(folder, 'source.mpc');
      convert([photograph(name)], '-strip -resize 640x640', [source]);
      for (const [file, [, , , how]] of Object.entries(WAYS))
        convert([source], how, [path.join(folder, file)]);
      const { pictures } = await check(folder);
      assert.deepEqual(
        Object.fromEntries(
          pictures.map(({ path, encoding, bits, channels }) => [path, [encoding, bits, channels]]),
        ),
        Object.fromEntries(Object.entries(WAYS).map(([file, [...made]]) => [file, made.slice(0, 3)])),
      );
    });

  it('a very strong sepia is a tone still, a leaf against the light is colour', async () => {
    const folder = temporaryFolder();
    const leaf = [photograph('Blinds')];
    const at = (file: string) => [path.join(folder, file)];
    convert(leaf, `-strip -resize 640x640 ${HALVED} 60`, at('leaf.jpg'));
    for (const share of ['70', '80'])
      convert(
        leaf,
        `-strip -resize 640x640 ${GREY} -sepia-tone ${share}% -depth 8`,
        at(`sepia-${share}.png`),
      );
    const { pictures } = await check(folder);
    assert.deepEqual(
      pictures.map(({ path, encoding }) => [path, encoding]),
      [
        ['leaf.jpg', 'colour'],
        ['sepia-70.png', 'rgb-toned'],
        ['sepia-80.png', 'rgb-toned'],
      ],
    );
  });
});
