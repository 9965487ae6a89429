import type { PageChange, PictureChange } from '../../shared/comparison';
import type { Format, PictureFacts, ProfileFacts } from '../../shared/picture';
import { sameShape } from '../page/same-shape';
import { toneDifferences, toneMoved } from './tones';

/** One thing that is otherwise in a picture than before, in words; `of` says of what, for machines. */
export interface Difference {
  of: Aspect;
  words: string;
}

export const ASPECTS = [
  'size',
  'turn',
  'lightness',
  'colour',
  'ink',
  'format',
  'channels',
  'profile',
  'resolution',
  'bytes',
  'nothing',
] as const;

export type Aspect = (typeof ASPECTS)[number];

/** What makes another picture of it; all else is how it is stored or described. */
const SEEN: ReadonlySet<Aspect> = new Set(['size', 'turn', 'lightness', 'colour', 'ink']);

/**
 * What is otherwise in a picture that is there on both sides, by what was read of either: what is seen first, then how it is
 * stored. Where nothing that is seen is otherwise, that is said, and no more than is known. Nothing of one and the
 * same content, nor of what could not be read.
 */
export function differencesOf(
  { before, after, samePixels }: Pick<PageChange, 'before' | 'after' | 'samePixels'>,
  bytes: PictureChange['bytes'],
): Difference[] {
  if (!before || !after) return [];
  const [was, is] = [before.facts, after.facts];
  if (was.unreadable || is.unreadable || (was.sha256 && was.sha256 === is.sha256)) return [];
  const found = [
    ...sizes(was, is),
    ...told('turn', was.orientation, is.orientation, value => `by its tag shown ${WAYS[value] ?? WAYS[1]}`),
    ...toneDifferences(was, is),
    ...inks(was, is),
    ...told('format', was.format, is.format, nameOfFormat),
    ...told('channels', ...both(was, is, channelsOf), words => words),
    ...told('profile', ...both(was, is, ({ profile }) => profileName(profile)), name => `profile ${name}`),
    ...told('resolution', ...both(was, is, resolutionOf), words => words),
    ...(bytes ? files(was, is, bytes) : []),
  ];
  if (found.some(({ of }) => SEEN.has(of))) return found;
  return [{ of: 'nothing', words: sameToTheEye(was, is, samePixels) }, ...found];
}

/** Shortly, since it is said picture by picture; `figuresAlone` says once what figures do not tell. */
function sameToTheEye(was: PictureFacts, is: PictureFacts, samePixels: boolean | null): string {
  if (samePixels) return 'pixel for pixel the same picture: only how it is stored or described has changed';
  if (samePixels === false) return 'by its figures the same picture, and not pixel for pixel: look at it';
  const exact =
    toneMoved(was, is) === 0 &&
    JSON.stringify([was.levels, was.zones]) === JSON.stringify([is.levels, is.zones]);
  return exact
    ? 'by its figures the same picture: look at it'
    : 'by its figures nearly the same, or another picture: look at it';
}

/** What all those have in common that are the same by their figures alone; '' where none is. */
export const figuresAlone = (changes: readonly Pick<PictureChange, 'pages' | 'bytes'>[]): string =>
  changes.some(({ pages, bytes }) =>
    pages.some(page => !page.samePixels && differencesOf(page, bytes).some(({ of }) => of === 'nothing')),
  )
    ? 'Figures do not tell where in a picture its tones lie, nor sharpness, compression and retouching: one that is the same by them, or nearly, may be turned, mirrored or cut, or another picture.'
    : '';

/** How a raster is shown by its orientation tag (EXIF 2.32, 4.6.4; TIFF 6.0, tag 274), by value. */
const WAYS: Readonly<Record<number, string>> = {
  1: 'as it is stored',
  2: 'mirrored, left for right',
  3: 'upside down',
  4: 'mirrored, top for bottom',
  5: 'mirrored, left for right, and then turned by a quarter to the left',
  6: 'turned by a quarter to the right',
  7: 'mirrored, left for right, and then turned by a quarter to the right',
  8: 'turned by a quarter to the left',
};

/** `JPEG, now PNG`: the value before and after, where it is another. */
function told<T extends string | number>(
  of: Aspect,
  was: T,
  is: T,
  words: (value: T) => string,
): Difference[] {
  return was === is ? [] : [{ of, words: `${words(was)}, now ${words(is).replace(PREFIX, '')}` }];
}

/** What was named before needs no name again. */
const PREFIX = /^(profile|by its tag shown) /;

const both = (was: PictureFacts, is: PictureFacts, of: (facts: PictureFacts) => string): [string, string] => [
  of(was),
  of(is),
];

function sizes(was: PictureFacts, is: PictureFacts): Difference[] {
  if (was.width === is.width && was.height === is.height) return [];
  const full = ({ width, height }: PictureFacts) => ({ fullWidth: width, fullHeight: height });
  const turned = was.width === is.height && was.height === is.width;
  const shape = turned
    ? 'turned by a quarter, or another picture'
    : sameShape(full(was), full(is))
      ? 'the same shape'
      : 'another shape: cut, or another picture';
  return [
    {
      of: 'size',
      words: `${was.width} × ${was.height}, now ${is.width} × ${is.height} pixels, ${shape}`,
    },
  ];
}

function inks({ ink: was }: PictureFacts, { ink: is }: PictureFacts): Difference[] {
  if (!was || !is) return [];
  const [before, after] = [was, is].map(({ maxTotal }) => Math.round(maxTotal));
  return before === after ? [] : [{ of: 'ink', words: `ink up to ${before} %, now ${after} %` }];
}

const nameOfFormat = (format: Format): string => format.toUpperCase();

function channelsOf({ channels, bits, alpha, palette }: PictureFacts): string {
  const depth = bits === 1 ? '1 bit' : `${bits} bits`;
  const many = channels === 1 ? `1 channel of ${depth}` : `${channels} channels of ${depth}`;
  return `${many}${palette ? ' by a palette' : ''}${alpha ? ' with transparency' : ''}`;
}

const profileName = (profile: ProfileFacts | null): string => profile?.description ?? 'none';

function resolutionOf({ ppi }: PictureFacts): string {
  if (!ppi) return 'no resolution tag';
  const [x, y] = [Math.round(ppi.x), Math.round(ppi.y)];
  return `${x === y ? x : `${x} × ${y}`} pixels per inch by its tag`;
}

/** Formats that can leave out more or less of a picture. */
const LOSSY: ReadonlySet<Format> = new Set<Format>(['jpeg', 'webp', 'avif', 'heic', 'jp2']);
/** Files of smaller steps count as equally large; from so much less on, compression is the likelier reason. Own choices. */
const STEP = 1.1;
const MUCH = 1.6;

function files(
  was: PictureFacts,
  is: PictureFacts,
  { before, after }: NonNullable<PictureChange['bytes']>,
): Difference[] {
  if (Math.max(before, after) < STEP * Math.min(before, after)) return [];
  const pressed =
    was.format === is.format &&
    LOSSY.has(is.format) &&
    was.width === is.width &&
    was.height === is.height &&
    before > MUCH * after;
  const why = pressed ? ' of as many pixels, so probably compressed more: look at fine detail' : '';
  return [{ of: 'bytes', words: `file of ${size(before)}, now ${size(after)}${why}` }];
}

/** Thousands and millions of bytes, with two digits that count. */
function size(bytes: number): string {
  const [value, unit] = bytes < 1e6 ? [bytes / 1e3, 'kB'] : [bytes / 1e6, 'MB'];
  return `${value < 9.95 ? value.toFixed(1) : Math.round(value)} ${unit}`;
}
