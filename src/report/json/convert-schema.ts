// no-unit-test: test/report/json/convert.test.ts validates reports against it, test/report/schemas.test.ts the schema itself
import {
  ENCODINGS,
  flag,
  head,
  list,
  number,
  object,
  orNull,
  type Schema,
  text,
  whole,
  words,
} from './schema-parts';

const path = text('Relative to the root of the book, forward slashes');
const contract = { const: 1, description: 'Number of this contract' };
const stopped = orNull(
  text(),
  'Why nothing more was begun, such as a full disk or an interruption; null where the work came to its end',
);
const counts = (outcomes: readonly string[]): Record<string, Schema> =>
  Object.fromEntries(outcomes.map(outcome => [outcome, whole('Pictures')]));

const OUTCOMES = ['converted', 'copied', 'planned', 'skipped', 'failed'];

const proof = object(
  {
    encoding: words('As a check would find it', ENCODINGS),
    maxError: number(
      "Largest difference of a pixel's L* from the planned: from the picture's own where `moved` is null",
    ),
    meanError: number('The mean of the same'),
    sha256: text('Of the result, hexadecimal'),
    bytes: whole('Size of the result'),
  },
  'What the result was found to be when it was read again',
);

const moved = object(
  {
    max: number("The most that a pixel's L* was moved"),
    mean: number('The mean of the same'),
    method: orNull(
      text(),
      'The way from colour to grey by its name, or its weights, which moved it; null: it did not',
    ),
    fit: flag('A curve had a part in it'),
    blackPoint: flag('The scaling of the black point had a part in it'),
  },
  "How far lightness was moved from the picture's own on purpose; null: it was not, or nothing was made",
);

const conversion = object({
  path,
  outcome: words(
    '`planned`: a dry run would convert it; `copied`: as it is, since it is what was asked for already, or in a dry run would be',
    OUTCOMES,
  ),
  output: orNull(
    text(),
    'Where the result is, would be, or lies from before: relative to the root, or in the output folder as it was named',
  ),
  sha256: orNull(text('Hexadecimal'), 'Hash of the picture; null where it was not opened'),
  from: words('How the picture stores its grey', ENCODINGS),
  to: words('What was asked for', ['rgb-neutral', 'single-channel', 'black-only', 'rgb-toned']),
  format: words('Of the result; null where none is written', ['jpeg', 'tiff', 'png', null]),
  bits: words('Of the result, a channel', [8, 16, null]),
  reason: orNull(text(), 'Why it was skipped, or why it failed and what to do'),
  proof: orNull(proof),
  moved: orNull(moved),
  told: list({ type: 'string' }, 'What was assumed, changed or lost'),
});

const told = list({ type: 'string' }, 'What it does and what it rests on');
const strength = number('From 0 to 1', { minimum: 0, maximum: 1 });

const fit = object(
  {
    target: text('Target of the book, or process'),
    process: text('Process by its id'),
    strength,
    moves: flag('False: nothing was to be fitted'),
    tones: list(
      object({
        from: number('L* in the file'),
        to: number('L* in the result'),
        printedAsIs: number('L* in print by the forecast, as the file is'),
        printed: number('The same, as the result is'),
      }),
      'The curve',
    ),
    told,
  },
  'How tones were fitted to what a target can print, all pictures alike',
);

const counterTint = object(
  {
    target: text('Target of the book'),
    against: words("The tint of the print, or that and the paper's own", ['print', 'paper']),
    strength,
    a: number('a* of the tint in the result'),
    b: number('b* of the tint in the result'),
    told,
  },
  'The tint that answers that of earlier prints, all pictures alike',
);

const source = text('Source of a layout, or evengrey.json; relative to the root');

const line = object({
  file: source,
  line: whole('From 1', 1),
  column: whole('From 1', 1),
  from: text('As it stood in the source'),
  to: text('As it stands there now, or would'),
  picture: text('Relative to the root'),
});

const relinking = object({
  changes: list(line, 'Lines of layouts that place another picture now, file by file'),
  settings: list(line, 'Lines of evengrey.json that name another picture now'),
  placedBefore: whole('Pictures to be placed that layouts placed before, without a change'),
  problems: list(
    object({ file: source, line: orNull(whole('From 1', 1), 'Null: the whole file'), why: text() }),
    'What was left as it was',
  ),
});

/** What `convert --format json` prints. */
export const convertReportSchema: Schema = {
  ...head('Evengrey: report of a conversion'),
  ...object({
    schema: contract,
    dryRun: flag('Nothing was written'),
    fit: orNull(fit),
    counterTint: orNull(counterTint),
    conversions: list(conversion, 'Sorted by path'),
    folder: orNull(text(), 'The folder for the results as it was named; null: they have none of their own'),
    missing: list(
      path,
      'Pictures that are not in that folder, though they were meant: it is not the whole set',
    ),
    originals: orNull(
      text(),
      'In place: the folder where originals are kept, or would be, relative to the root; else null',
    ),
    untoned: list(path, 'Pictures whose strong tone is gone, or would be, though it may be meant'),
    below: orNull(number('CIELAB'), 'Colour of this chroma and more was to stay; null: none was'),
    notices: list({ type: 'string' }, 'What was left out, and what a person should look at'),
    relinking: orNull(relinking, 'Null where that was not asked for'),
    stopped,
    summary: object({
      ...counts(OUTCOMES),
      otherThanAsked: whole(
        'Results that are found to be of another encoding than was asked for; colour that was to stay (`below`) is as asked',
      ),
    }),
  }),
};

const UNDONE = ['restored', 'planned', 'skipped', 'failed', 'lost'];

/** What `convert --undo --format json` prints. */
export const undoReportSchema: Schema = {
  ...head('Evengrey: report of an undoing'),
  ...object({
    schema: contract,
    dryRun: flag('Nothing was written'),
    undone: list(
      object({
        path,
        outcome: words('`planned`: a dry run would restore it', UNDONE),
        sha256: orNull(text('Hexadecimal'), 'Hash of the original; null where there is none'),
        reason: orNull(text(), 'Why it was skipped, or why it failed and what to do'),
      }),
      'Sorted by path',
    ),
    relinking: orNull(relinking, 'Layouts that place the originals again; null where none was relinked'),
    stopped,
    summary: object(counts(UNDONE)),
  }),
};
