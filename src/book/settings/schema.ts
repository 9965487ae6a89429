// no-unit-test: test/book/settings/validate.test.ts reads texts by it, test/report/schemas.test.ts the schema itself
import { meaningOf } from '../../rules/words';
import type { Encoding, Intent } from '../../shared/picture';
import type { RouteId } from '../../shared/target';

/** A node of JSON Schema, draft 7. */
export type Schema = Record<string, unknown>;

export interface Word {
  id: string;
  name: string;
}

/** The names that settings may use, from the folders that own them. */
export interface Words {
  processes: readonly Word[];
  papers: readonly Word[];
  lights: readonly Word[];
  /** Schema of the key `rules`, which knows every rule and its options. */
  rules: Schema;
}

const encodings: Encoding[] = [
  'single-channel',
  'rgb-neutral',
  'rgb-residual',
  'rgb-toned',
  'black-only',
  'four-channel',
  'three-ink',
  'bilevel',
  'lab-neutral',
  'colour',
];
const routes: Record<RouteId, string> = {
  rgb: 'Printed as red, green and blue',
  separated: 'RGB and grey are separated to four inks',
  inks: 'Ink values are kept as they are',
  'black-plate': 'Everything goes to the black plate alone',
  unknown: 'Nobody said: forecasts mix the usual ones',
};
/** How much an optical brightener lifts a paper: the classes of ISO 15397. */
const brighteners = {
  none: 'No optical brightener',
  faint: 'A trace of it',
  low: 'Little of it',
  moderate: 'Some of it: bluer in daylight than under lamps',
  high: 'Much of it: clearly bluer in daylight than under lamps',
};
const intents: Intent[] = ['grey', 'toned', 'colour', 'line'];

const named = (words: readonly Word[]) => ({
  enum: words.map(w => w.id),
  enumDescriptions: words.map(w => w.name),
});
const path = (description: string): Schema => ({ type: 'string', minLength: 1, description });
const millimetres = (description: string): Schema => ({ type: 'number', exclusiveMinimum: 0, description });
const object = (properties: Record<string, Schema>, rest: Schema = {}): Schema => ({
  type: 'object',
  additionalProperties: false,
  properties,
  ...rest,
});

function globs(description: string): Schema {
  return {
    description,
    anyOf: [
      { type: 'string', minLength: 1 },
      { type: 'array', items: { type: 'string', minLength: 1 } },
    ],
  };
}

/** The keys of one target: the same in `targets`, at the top level and in a house file. */
function targetKeys(words: Words): Record<string, Schema> {
  return {
    process: {
      description:
        'How the book is printed. Everything that is forecast follows from it; left out, pictures are told by what their files hold alone.',
      ...named(words.processes),
    },
    paper: {
      description: 'A paper by name, or its measured white. Left out: the usual paper of the process.',
      anyOf: [
        { type: 'string', ...named(words.papers) },
        object(
          {
            lab: {
              type: 'array',
              description: 'Measured white of the bare paper: L*, a*, b* (CIELAB, D50, 2 degrees).',
              items: [
                { type: 'number', minimum: 40, maximum: 100 },
                { type: 'number', minimum: -30, maximum: 30 },
                { type: 'number', minimum: -30, maximum: 30 },
              ],
              minItems: 3,
              maxItems: 3,
              additionalItems: false,
            },
            brightened: {
              description: 'How strongly the paper is brightened.',
              enum: Object.keys(brighteners),
              enumDescriptions: Object.values(brighteners),
            },
          },
          { required: ['lab'] },
        ),
      ],
    },
    light: {
      description:
        'The light that the book is looked at under: a grey that looks neutral in daylight may not under a lamp. Left out: daylight of a viewing booth.',
      default: 'D50',
      ...named(words.lights),
    },
    route: {
      description:
        'What the print house does with the numbers it is sent. Ask it: on a press most of the tint hangs on this. Left out: nobody knows, except where a process prints RGB alone.',
      enum: Object.keys(routes),
      enumDescriptions: Object.values(routes),
    },
    profile: path('ICC profile from the print house, relative to this file: the forecast goes by it.'),
    record: path(
      'Record of what this print house delivered before, relative to this file: the forecast goes by its measured orders.',
    ),
    encodings: {
      type: 'array',
      description:
        'How the print house wants its files to store grey. Pictures that are stored otherwise are errors. Left out: any way is taken.',
      items: { enum: encodings, enumDescriptions: encodings.map(meaningOf) },
      minItems: 1,
      uniqueItems: true,
    },
    inkLimit: {
      type: 'number',
      description: 'Most ink in one place, in percent: 300 is usual on coated paper.',
      minimum: 100,
      maximum: 400,
    },
  };
}

/** A file shared by several books of one print house: the keys of a target, nothing else. */
export function houseSchema(words: Words): Schema {
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'Evengrey house file: one print house, shared by several books',
    ...object({ $schema: { type: 'string' }, ...targetKeys(words) }),
    allowComments: true,
    allowTrailingCommas: true,
  };
}

/** `evengrey.json`. */
export function settingsSchema(words: Words): Schema {
  const keys = targetKeys(words);
  const target = {
    ...keys,
    house: path("A file with these same keys, shared by several books, inside the book's folder."),
  };
  const group = object(
    {
      pictures: globs('Globs of the pictures.'),
      reference: path('The picture whose tone the others are to match.'),
    },
    { required: ['pictures'] },
  );
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'Evengrey settings: one book',
    allowComments: true,
    allowTrailingCommas: true,
    ...object({
      $schema: { type: 'string', description: 'Where this schema lies. Not needed in the editor.' },
      pictures: globs(
        'The pictures of the book, as globs from this folder. Left out: those that layouts place, else every picture in it.',
      ),
      ignore: globs('Left out of the book, as globs from this folder: drafts, web copies.'),
      ...target,
      targets: {
        type: 'object',
        description:
          'Where the book will be printed, by names of your own: a dummy, an edition, a cover. With one target alone its keys may stand at the top level instead.',
        additionalProperties: object(target),
        minProperties: 1,
      },
      parts: {
        type: 'object',
        description:
          'Parts of the book that are judged apart. The first part that names a picture has it; pictures of no part print on the targets that no part claims.',
        additionalProperties: object(
          {
            pictures: globs('Globs of the pictures.'),
            target: {
              description: 'Name of the target, or several. Left out: all of them.',
              anyOf: [
                { type: 'string' },
                { type: 'array', items: { type: 'string' }, minItems: 1, uniqueItems: true },
              ],
            },
          },
          { required: ['pictures'] },
        ),
      },
      intent: object(
        Object.fromEntries(
          intents.map(intent => [
            intent,
            intent !== 'toned'
              ? globs(`Pictures meant to be ${intent === 'line' ? 'line art' : intent}.`)
              : {
                  description:
                    'Pictures with a deliberate tone: globs, or {pictures, reference} with the picture they are to match.',
                  anyOf: [
                    { type: 'string', minLength: 1 },
                    group,
                    { type: 'array', items: { anyOf: [{ type: 'string', minLength: 1 }, group] } },
                  ],
                },
          ]),
        ),
        { description: 'What pictures are meant to be. Left out: grey.' },
      ),
      trim: object(
        { width: millimetres('Width in mm.'), height: millimetres('Height in mm.') },
        {
          description: 'Size of the trimmed page in mm.',
          required: ['width', 'height'],
        },
      ),
      placements: {
        type: 'object',
        description: 'Printed size of pictures in mm: a path or a glob, then its width or its height.',
        additionalProperties: object(
          { width: millimetres('Printed width in mm.'), height: millimetres('Printed height in mm.') },
          { minProperties: 1 },
        ),
      },
      layouts: globs(
        'The sources that lay out the book (Markdown, HTML, CSS, LaTeX, Typst, AsciiDoc), as globs, in the order of the book; a chapter that one of them takes in is named with it, and stands there. Left out: every one in this folder by name, readmes excepted.',
      ),
      textWidth: millimetres(
        'Width of the text in mm. Where a layout says "half of the text width", the printed size, and so the resolution, is known by it.',
      ),
      spreads: {
        type: 'array',
        description:
          'Pictures that are seen side by side, in the order of the book: one list of paths a spread. Which pages face each other is read from no layout, so name them here. All others stand where the layouts place them, else by name.',
        items: { type: 'array', items: { type: 'string', minLength: 1 } },
      },
      rules: words.rules,
    }),
  };
}
