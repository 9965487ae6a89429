import { printedScale } from '../../rules/printed';
import { millimetres } from '../../rules/words';
import type { BookPicture } from '../../shared/finding';
import type { Format, PictureFacts } from '../../shared/picture';

const formats: Partial<Record<Format, string>> = {
  psd: 'Layered document (PSD)',
  'lfs-pointer': 'Large-file pointer',
  unknown: 'Unknown format',
  webp: 'WebP',
};

/** What was read from the file, and how large it is placed, label and value; only what there is. */
export function factLines(picture: BookPicture): [label: string, value: string][] {
  const { facts } = picture;
  if (!isThere(facts)) return [];
  const lines: [string, string | null][] = [
    ['File', fileLine(facts)],
    ['Stored as', facts.channels > 0 ? storedLine(facts) : null],
    // of a damaged file nobody knows whether it has one
    ['Profile', facts.profile?.description ?? (facts.space && !facts.unreadable ? 'none' : null)],
    ['Taken for', facts.assumed],
    ['Resolution', resolution(facts)],
    ['As placed', asPlaced(picture)],
    ['Lightness', facts.tone && `L* ${round(facts.tone.darkest)} to ${round(facts.tone.lightest)}`],
    ['Colour', facts.chroma && `C* up to ${round(facts.chroma.max)}, ${round(facts.chroma.mean)} on average`],
    [
      'Ink',
      facts.ink &&
        `up to ${Math.round(facts.ink.maxTotal)} %, ${Math.round(facts.ink.meanTotal)} % on average`,
    ],
  ];
  const known = lines.filter((line): line is [string, string] => Boolean(line[1]));
  return [...known, ...facts.remarks.map((remark): [string, string] => ['Note', remark.text])];
}

/** Of a file that is not there nothing was read, not even its format. */
const isThere = ({ unreadable }: PictureFacts) => unreadable?.reason !== 'missing';

function fileLine({ format, width, height }: PictureFacts): string {
  const name = formats[format] ?? format.toUpperCase();
  return width > 0 ? `${name}, ${width} × ${height} pixels` : name;
}

function storedLine({ channels, bits, alpha, palette }: PictureFacts): string {
  const many = channels === 1 ? 'one channel' : `${channels} channels`;
  const depth = bits === 1 ? '1 bit' : `${bits} bits`;
  return `${many} of ${depth}${palette ? ', by a palette' : ''}${alpha ? ', with transparency' : ''}`;
}

function resolution({ ppi }: PictureFacts): string | null {
  if (!ppi) return null;
  const [x, y] = [Math.round(ppi.x), Math.round(ppi.y)];
  return `${x === y ? x : `${x} × ${y}`} pixels per inch by the file's own tag`;
}

/** The tag says nothing of the print where a layout, or the settings, give the picture another size. */
function asPlaced(picture: BookPicture): string | null {
  const { perMm, from } = printedScale(picture);
  if (from !== 'placed' || !perMm) return null;
  const { width, height } = picture.placed!;
  const edge = width ? `a width of ${millimetres(width)}` : `a height of ${millimetres(height!)}`;
  const size = width && height ? `${millimetres(width)} × ${millimetres(height)}` : edge;
  return `${Math.round(perMm * MM)} pixels per inch at ${size}`;
}

const MM = 25.4;

/** One decimal below ten, none above: never more than the eye can tell. */
const round = (value: number) =>
  Math.abs(value) < 9.95 ? String(Number(value.toFixed(1))) : value.toFixed(0);
