import type { Header } from '../picture/types';
import { FITTED } from '../picture/xmp/record';
import type { GreyMethod, RemedyEncoding, RemedyFormat, RemedyWish, Tone } from '../shared/remedy';
import type { Stored } from './encode/stored';
import { formatChange } from './format';
import type { Stays } from './luminance';
import type { ReadPicture } from './source';

const ENCODINGS: Record<RemedyEncoding, string> = {
  'rgb-neutral': 'R = G = B',
  'single-channel': 'one grey channel',
  'black-only': 'black ink alone',
  'rgb-toned': 'RGB with a tone',
};

/**
 * What was done, in words and numbers, for the record inside the file, which begins with the encoding's own name. The
 * same wish gives the same words.
 * @param black what became of the black; null: nothing
 */
export function parametersOf(wish: RemedyWish, bits: number, black: string | null): string {
  const { to, below, tone, curve } = wish;
  return [
    `${ENCODINGS[to]}, ${bits} bits`,
    methodWords(wish.grey),
    to === 'rgb-neutral' && below !== null ? `colour below a chroma of ${below} removed` : null,
    to === 'rgb-toned' ? toneWords(tone) : null,
    curve ? FITTED : null,
    black,
  ]
    .filter(part => part !== null)
    .join('; ');
}

function methodWords(method: GreyMethod): string {
  if (method.kind === 'lightness') return 'grey by CIELAB lightness';
  if (method.kind === 'luma') return 'grey by luma, the weights of ITU-R BT.709 on the stored values';
  return `grey by weights of the linear channels: ${method.red} red, ${method.green} green, ${method.blue} blue`;
}

function toneWords(tone: Tone): string {
  if (tone.kind === 'own') return "the picture's own tone";
  if (tone.kind === 'even') return "one tone, the picture's mean";
  return `stated tone a* ${tone.a}, b* ${tone.b}`;
}

/** Remarks on a source that bear on what its numbers were taken for. */
const BEARING: ReadonlySet<string> = new Set([
  'bad-profile',
  'spot-inks',
  'float-range',
  'no-ink-marker',
  'min-is-white',
]);

/** More than this, in L*, can be seen in a smooth tone. */
const SEEN = 0.5;

/** That a file which rounds nothing by itself is off what was intended, and the way out. */
export function offWords(maxError: number, { bits }: Pick<Stored, 'bits'>, format: RemedyFormat): string[] {
  if (format === 'jpeg' || maxError <= SEEN) return [];
  const off = `Tones are off by up to L* ${maxError.toFixed(1)}, which can be seen in smooth ones`;
  return [
    bits === 8
      ? `${off}: their levels lie too far apart in 8 bits. Ask for 16 bits ("--bits 16").`
      : `${off}: the result cannot hold all of them. Choose another profile or encoding.`,
  ];
}

/** What was assumed of the source. */
export function sourceWords({ header, reading }: ReadPicture): string[] {
  const remarks = [...header.remarks, ...reading.remarks].filter(({ code }) => BEARING.has(code));
  return [...(reading.assumed ? [reading.assumed] : []), ...remarks.map(({ text }) => text)];
}

/** Why 8 bits became 16, unasked. */
export const COARSE =
  'Stored in 16 bits: 8 are too few for the tone curve of the grey profile, which puts its levels far apart.';

/** What the result is stored as, beyond what was asked in so many words. */
export function storedWords(
  stored: Stored,
  wish: RemedyWish,
  format: RemedyFormat,
  header: Header,
  stays: Stays,
): string[] {
  const change = formatChange(header.format, wish, stays);
  const told = change ? [change] : [];
  if (format === 'jpeg' && header.bits > 8)
    told.push(`A JPEG has 8 bits a channel; the source has ${header.bits}.`);
  if (stored.space === 'cmyk')
    told.push(
      'Black ink alone, without a profile: how light its tones are is taken from grade 1 coated paper (ANSI/CGATS TR 006), relative to the paper.',
    );
  if (stored.space === 'grey')
    told.push(
      wish.greyProfile
        ? 'The named grey profile is embedded.'
        : "The numbers are those of sRGB's greys, and a grey profile that says so is embedded.",
    );
  if (wish.greyProfile && wish.bits === null && stored.bits > Math.max(8, header.bits)) told.push(COARSE);
  if (stored.space === 'rgb') told.push('The numbers are sRGB, and its profile is embedded.');
  if (header.orientation !== 1)
    told.push(
      wish.upright
        ? 'The pixels were turned upright, and the orientation tag was set back.'
        : 'The orientation tag was kept: the pixels lie as they lay.',
    );
  return told;
}

/** That JPEG coded the tones anew; what it cost is measured on the written file, and stands in its proof. */
export const anewWords = (quality: number): string =>
  `Coded anew as JPEG of quality ${quality}: the tones were rounded.`;

/** That nothing was rounded. @param isRight the source was stored so already */
export const stayedWords = (
  { space }: Pick<Stored, 'space'>,
  source: Pick<Header, 'space'>,
  isRight: boolean,
): string => {
  if (isRight)
    return 'Only the profile was embedded: what the JPEG decodes its tones from stayed as it was, to the byte.';
  const luminance = 'the luminance of the JPEG stayed as it was coded';
  if (space === 'grey')
    return `Only the colour channels were left out: ${luminance}, and nothing was rounded anew.`;
  return source.space === 'grey'
    ? `Only colour channels without colour were added: ${luminance}, and nothing was rounded anew.`
    : `Only the colour was taken out of its channels: ${luminance}, and nothing was rounded anew.`;
};
