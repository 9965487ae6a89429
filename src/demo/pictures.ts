// no-unit-test: a list; test/cli/demo.test.ts checks what a check of the demo says of every entry
import sharp, { type Sharp } from 'sharp';
import type { Master, SceneId } from './masters';
import { asLightAs, lifted, type Mix } from './same-grey';
import { deepTiff, inksTiff, labTiff, lineTiff, PPI, rgb, rgba } from './store';

export interface DemoPicture {
  file: string;
  scene: SceneId;
  store(master: Master): Sharp | Buffer;
  /** What is done to the finished bytes, e.g. cut short. */
  spoil?(bytes: Buffer): Buffer;
}

const jpeg = { quality: 92, chromaSubsampling: '4:2:0' };

const tagged = (picture: Sharp) => picture.withIccProfile('srgb').withMetadata({ density: PPI });
/** The library keeps ink values as they are when they come from a file. */
const inksJpeg = (file: Buffer) =>
  sharp(file).pipelineColourspace('cmyk').toColourspace('cmyk').jpeg({ quality: 92 });
const plainJpeg = (picture: Sharp) => tagged(picture).jpeg(jpeg);

const page = (file: string, scene: SceneId): DemoPicture => ({
  file: `pictures/${file}`,
  scene,
  store: master => plainJpeg(rgb(master)),
});

/** The pages of the book: kept as R = G = B, as they should be. */
const pages: DemoPicture[] = [
  page('01-standing-stones.jpg', 'fog'),
  page('02-sound.jpg', 'sky'),
  page('03-old-quarry.jpg', 'cliff'),
  page('04-keeper.jpg', 'head'),
  page('05-sailcloth.jpg', 'cloth'),
  page('06-north-wood.jpg', 'wood'),
  page('07-last-window.jpg', 'window'),
  page('08-snow-fence.jpg', 'snow'),
];

const keeperIn = (file: string, store: DemoPicture['store']): DemoPicture => ({
  file: `encodings/keeper-${file}`,
  scene: 'head',
  store: master => store(lifted(master)),
});
const inMix = (mix: Mix) => (master: Master) => inksTiff(master, asLightAs(mix));

/** One master in every encoding, of the same lightness in each: only how the grey is stored differs. */
const keeper: DemoPicture[] = [
  keeperIn('rgb-neutral.jpg', master => plainJpeg(rgb(master))),
  keeperIn('single-channel.tif', master => deepTiff(master, 'grey')),
  keeperIn('lab-neutral.tif', labTiff),
  keeperIn(
    'black-only.tif',
    inMix(d => [0, 0, 0, 100 * d]),
  ),
  keeperIn(
    'four-channel.tif',
    // near-neutral triplets of the trade (25/19/19, 50/40/40, 75/66/66) with black from the lights on
    inMix(d => [62 * d, 62 * d * (0.74 + 0.14 * d), 62 * d * (0.74 + 0.14 * d), 85 * d ** 2]),
  ),
  keeperIn(
    'three-ink.tif',
    inMix(d => [100 * d, 100 * d, 100 * d, 0]),
  ),
];

/** One fault each that its file is named for; a fault may bring another along. */
const faults: DemoPicture[] = [
  {
    file: 'faults/green-corner.jpg',
    scene: 'cloth',
    store: master =>
      plainJpeg(rgb(master, (_, x, y) => [0, 14 * Math.max(0, 1 - 2.2 * Math.hypot(x, 1 - y)), 0])),
  },
  {
    file: 'faults/red-mark.png',
    scene: 'snow',
    store: master =>
      tagged(
        rgb(master, (_, x, y) => (Math.hypot((x - 0.72) * 1.5, y - 0.3) < 0.02 ? [60, -50, -60] : [0, 0, 0])),
      ).png(),
  },
  {
    file: 'faults/cast-that-turns.jpg',
    scene: 'sky',
    // blue shadows, warm lights, as from colour curves that cross
    store: master =>
      plainJpeg(
        rgb(master, tone => {
          const warm = 2 * tone - 1;
          return [22 * warm, 5 * warm, -22 * warm];
        }),
      ),
  },
  {
    file: 'faults/too-much-ink.jpg',
    scene: 'cliff',
    // in balance, but nothing is taken back where black comes in
    store: master =>
      inksJpeg(
        inksTiff(master, d => {
          const others = 62 * d * (0.74 + 0.14 * d) + 36 * d ** 6;
          return [62 * d + 36 * d ** 6, others, others, 96 * d ** 2];
        }),
      ),
  },
  {
    file: 'faults/shadows-lost.jpg',
    scene: 'wood',
    store: master =>
      plainJpeg(rgb({ ...master, tones: master.tones.map(tone => Math.max(0, 1.25 * tone - 0.3)) })),
  },
  { file: 'faults/no-profile.tif', scene: 'fog', store: master => deepTiff(master, 'rgb') },
  {
    file: 'faults/see-through.png',
    scene: 'fog',
    // coloured where nobody sees it: transparent pixels do not count
    store: master =>
      tagged(
        rgba(
          master,
          (x, y) => (Math.hypot(x - 0.5, y - 0.5) < 0.5 ? 1 : 0),
          (_, x, y) => (Math.hypot(x - 0.5, y - 0.5) < 0.5 ? [0, 0, 0] : [80, -60, 20]),
        ),
      ).png(),
  },
  { file: 'faults/really-a-png.jpg', scene: 'sky', store: master => tagged(rgb(master)).png() },
  {
    file: 'faults/cut-short.jpg',
    scene: 'cloth',
    store: master => plainJpeg(rgb(master)),
    spoil: bytes => bytes.subarray(0, Math.round(bytes.length * 0.6)),
  },
  {
    file: 'faults/not-fetched.jpg',
    scene: 'cloth',
    store: master => plainJpeg(rgb(master)),
    spoil: bytes =>
      Buffer.from(
        `version https://git-lfs.github.com/spec/v1\noid sha256:${'5e'.repeat(32)}\nsize ${bytes.length}\n`,
      ),
  },
];

/** Meant to be other than grey: the settings say so. */
const meant: DemoPicture[] = [
  {
    file: 'extras/toned-cloth.jpg',
    scene: 'cloth',
    store: master =>
      plainJpeg(rgb(master, tone => [22 * tone * (1.6 - tone), 4 * tone, -26 * tone * (1.4 - tone)])),
  },
  {
    file: 'extras/harbour-in-colour.jpg',
    scene: 'sky',
    store: master =>
      plainJpeg(
        rgb(master, (tone, x, y) => (y > 0.8 ? [-30, 4 + 20 * x, 40 * tone] : [70 * y, 10, -50 * (y - 0.3)])),
      ),
  },
  {
    file: 'extras/cutting-line.tif',
    scene: 'snow',
    store: lineTiff,
  },
];

export const demoPictures: readonly DemoPicture[] = [...pages, ...keeper, ...faults, ...meant];
