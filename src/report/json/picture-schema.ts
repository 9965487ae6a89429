// no-unit-test: test/report/json/index.test.ts validates reports against it, test/report/schemas.test.ts the schema itself
import { finding } from './finding-schema';
import { forecast } from './forecast-schema';
import {
  ENCODINGS,
  FORMATS,
  flag,
  list,
  number,
  object,
  orNull,
  share,
  text,
  whole,
  words,
} from './schema-parts';

const level = object({ min: number('Smallest'), max: number('Largest'), mean: number('Mean') });

const chroma = object({
  max: number('Largest C* of a pixel'),
  mean: number('Mean C*'),
  share: share("Share of the area that strays from the picture's tone line by more than the limit"),
  hue: orNull(
    number('Degrees', { minimum: 0, maximum: 360 }),
    'Mean hue angle; null where there is none to speak of',
  ),
  zones: list(
    object({
      L: number('Lightness L*'),
      weight: share('Share of the area'),
      a: number('Median a* at this lightness: the tone line'),
      b: number('Median b* at this lightness'),
      residual: number('Mean distance from the tone line'),
    }),
  ),
  places: list(
    object({
      x: whole('Left edge'),
      y: whole('Top edge'),
      width: whole('Width'),
      height: whole('Height'),
      max: number('Strongest distance from the tone line inside'),
    }),
    'Boxes of left-over colour in pixels of the stored raster, strongest first',
  ),
  maxBlock: number('Largest distance of an 8 x 8 block from the tone line'),
  maxPixel: number('Largest distance of a single pixel from the tone line'),
});

export const picture = object({
  path: text('Relative to the root, forward slashes'),
  page: whole('Page of the file, from 1', 1),
  sha256: orNull(text('Hexadecimal'), 'Hash of the file; null where it was not opened'),
  format: words('By content, not by name', FORMATS),
  width: whole('Pixels as stored; 0 where unknown'),
  height: whole('Pixels as stored; 0 where unknown'),
  channels: whole('Without alpha and spot inks, palette expanded; 0 where unknown'),
  bits: whole('Bits a channel; 0 where unknown'),
  alpha: flag('Transparent pixels are composited on paper white and do not count'),
  palette: flag('Stored by a palette'),
  space: orNull(words('', ['grey', 'rgb', 'cmyk', 'lab']), 'Colour model of the stored channels'),
  encoding: words('How the picture stores its grey', ENCODINGS),
  intent: words('What it is meant to be', ['grey', 'toned', 'colour', 'line']),
  intentStated: flag('False: nobody said so, and no conversion recorded it: grey was taken for granted'),
  part: orNull(text(), 'Part of the book'),
  targets: list({ type: 'string' }, 'Names of the targets it is printed on, as `forecast` lists them'),
  replacedBy: orNull(
    text(),
    'Path of the converted copy in the book that took its place: it is not judged and has no forecast; null where none did',
  ),
  placedAt: list(
    object({
      file: text('Layout source, relative to the root'),
      line: whole('Of the path in it, from 1', 1),
      column: whole('Characters (UTF-16), from 1', 1),
    }),
    'Where layouts place it, in the order of the book; style sheets last',
  ),
  position: orNull(
    whole('From 1, the same for all pages of a file', 1),
    'Its place in the order of the book, among the pictures of this report: as `spreads` say it, else as the layouts place it first. Null where neither does: it comes after the others, by name. A style sheet gives no place',
  ),
  placed: orNull(
    object({
      width: orNull({ type: 'number' }, 'mm'),
      height: orNull({ type: 'number' }, 'mm'),
    }),
    'Printed size where the settings say it, else the largest at which a layout places it',
  ),
  profile: orNull(
    object({
      description: text('As the profile calls itself'),
      space: words('Its data colour space', ['grey', 'rgb', 'cmyk', 'lab']),
      class: text('ICC device class in words'),
      greyAxisChroma: orNull(number('C*'), 'Largest C* of its grey axis; null where it was not computed'),
    }),
    'Embedded ICC profile',
  ),
  assumed: orNull(text(), 'What the numbers were taken to mean where no profile says it'),
  ppi: orNull(object({ x: number('Across'), y: number('Down') }), "Pixels per inch by the file's own header"),
  orientation: whole('EXIF orientation; the raster is never turned', 1),
  remedied: orNull(
    object({
      from: text('Hexadecimal SHA-256 of the picture that it was made from'),
      to: words('What it was converted to', ['rgb-neutral', 'single-channel', 'black-only', 'rgb-toned']),
      toned: flag('Its tint is meant'),
    }),
    'What its own XMP says of the conversion that made it; null where none did',
  ),
  levels: list(
    level,
    'One a stored channel, native units, transparent pixels left out. Palette expanded; grey with 0 = black; CMYK with 0 = no ink',
  ),
  chroma: orNull(chroma, 'CIELAB D50'),
  ink: orNull(
    object({ maxTotal: number('Largest total, 0-400'), meanTotal: number('Mean total, 0-400') }),
    'Percent; null without inks',
  ),
  tone: orNull(
    object({
      darkest: number('L* of the darkest pixel'),
      lightest: number('L* of the lightest pixel'),
      histogram: list(share('Share of the area'), '101 shares of the area, one for each L* from 0 to 100'),
    }),
    'CIELAB L*',
  ),
  remarks: list(object({ code: text('Kind'), text: text('In words') }), 'Worth telling, no verdict'),
  unreadable: orNull(
    object({ reason: text('Kind'), text: text('What is wrong and what to do') }),
    'Set if and only if the encoding is `unreadable`',
  ),
  forecast: list(forecast, 'One a target; empty where nothing can be said'),
  findings: list(finding, 'Worst first'),
  verdict: words(
    'What to do with it: `send` it as it is, `convert` it first, `ask` the print house, `mend` the file, `leave`: nothing to judge. Shared findings of the book count too',
    ['send', 'convert', 'ask', 'mend', 'leave'],
  ),
});
