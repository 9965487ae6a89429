// no-unit-test: test/report/json/index.test.ts validates reports against it, test/report/schemas.test.ts the schema itself
import {
  ENCODINGS,
  FORMATS,
  flag,
  head,
  list,
  number,
  object,
  orNull,
  type Schema,
  share,
  text,
  whole,
  words,
} from './schema-parts';

const point = (description: string): Schema =>
  object({ a: number('CIELAB a*'), b: number('CIELAB b*') }, description);

const ROUTES = ['rgb', 'separated', 'inks', 'black-plate'];

const bands = object(
  {
    neutral: share('dCh below 1'),
    faint: share('1 to 2: seen beside a neutral only'),
    visible: share('2 to 4'),
    obvious: share('4 to 7'),
    heavy: share('above 7'),
  },
  'Sizes of the tint (dCh, distance from the grey aim in the a*b* plane) over all that a picture prints in all orders: each zone’s own probabilities, weighed by area and visibility. They add up to 1. Of a stated value they are probabilities of orders; of a picture those are `seen` and `seenObvious`.',
);

const tint = object(
  {
    a: number('CIELAB a* of the mean tint'),
    b: number('CIELAB b* of the mean tint'),
    chroma: number('Length of the mean tint'),
    hue: number('Hue angle of the mean tint in degrees', { minimum: 0, maximum: 360 }),
    direction: words('Null: no predictable direction.', ['warm', 'greenish', 'bluish', 'pinkish', null]),
    directionProbability: share('Probability of dCh >= 1 within 45 degrees of the mean hue'),
    bands,
    seen: share(
      'Probability that one order shows a tint of dCh >= 2 on at least a quarter of the picture, by area and visibility',
    ),
    seenObvious: share('The same of an obvious tint: dCh >= 4'),
  },
  'The print’s distance from the grey aim of its paper under the same light. A mean over many orders, not the colour that one order will have. Of a picture of black and white alone (one bit) these are figures of its solid black and the bare paper, and no odds that a tint is seen: there is no grey to be tinted.',
);

const spread = {
  house: point('One standard deviation from print house to print house, with what no data tell of any'),
  order: point('One standard deviation from order to order of one house, shared by all pages of an order'),
  page: point('One standard deviation within an order'),
  corr: number('Correlation of a* and b*, all of them together', { minimum: -1, maximum: 1 }),
};

const zone = object({
  L: number('Lightness L* in the file'),
  weight: share('Share of the picture’s area'),
  Lprint: number('CIELAB L* of the print, adapted to D50'),
  a: number('CIELAB a* of the print'),
  b: number('CIELAB b* of the print'),
  aimA: number('a* of the grey aim at this lightness'),
  aimB: number('b* of the grey aim at this lightness'),
  sdA: number('Standard deviation of the tint along a*, houses, orders and pages together'),
  sdB: number('Standard deviation of the tint along b*'),
  corr: number('Correlation of the two', { minimum: -1, maximum: 1 }),
});

const route = object({
  route: words('What is done with the numbers', ROUTES),
  label: text('The same in words'),
  weight: share('Weight in the mixture: our own guess'),
  Lprint: number('L* of the print, the mean over the area'),
  black: number('L* of the darkest black by this way'),
  tint,
  spread: object(spread),
});

const forecast: Schema = {
  ...object(
    {
      condition: object({
        process: text('Process by its id'),
        paper: text('Paper by its id, or `measured`'),
        light: text('Light by its id'),
        route: words('What is done with the numbers of this picture, whatever was asked', [
          ...ROUTES,
          'unknown',
        ]),
        basis: words(
          'What the forecast rests on. `generic`: priors or generic dyes; `data`: public data of such a process; `profile`, `record`: of this print house',
          ['generic', 'data', 'profile', 'record'],
        ),
      }),
      zones: list(zone, 'Lightness zones of the picture'),
      tint,
      absolute: point('Away from true neutral, as seen beside another paper: tint + parts.paper, exactly'),
      spread: object({ ...spread, paper: point('The paper’s own spread, which widens `absolute` only') }),
      parts: object(
        {
          paper: point('The grey aim of the paper'),
          process: point('The process with its reference encoding under D50'),
          encoding: point('This picture’s encoding beside the reference'),
          light: point('Change from D50, relative to the paper under the same light'),
        },
        'tint = process + encoding + light, exactly',
      ),
      lightParts: object(
        {
          colourants: point(
            'Inks or dyes and paper under the light, the brightener shining as under D50 (metamerism)',
          ),
          brightener: point('What comes of the light’s other share of ultraviolet'),
        },
        'parts.light = colourants + brightener, exactly',
      ),
      range: object({
        black: number(
          'L* of the darkest black with this encoding: by the likeliest way of the house, the one that keeps the encoding where there is one',
        ),
        blackDeepest: number('The same by the way with the deepest black'),
        blackWeakest: number('By the way with the weakest'),
        white: number('L* of the paper'),
        blockedShare: share('Share of the picture that is too dark to be told from black'),
        closedShare: share(
          'Share of the picture whose shades come out as black: blockedShare without the file’s own black (its darkest tone, whatever that is in this encoding, and what lies within L* 1 of it)',
        ),
        lostSteps: number('Steps of L* 1 that the picture uses and that come out as black'),
      }),
      routes: list(route, 'Where the route is not known: each one and its weight'),
      notes: list(
        { type: 'string' },
        'What was asked for and sets the forecast apart, or changes nothing in it',
      ),
      ground: list({ type: 'string' }, 'Where the figures come from and what is a guess'),
    },
    'How a picture is expected to print under one condition. Not a proof: a test print comes first.',
  ),
  required: 'condition zones tint absolute spread parts lightParts range notes ground'.split(' '),
};

export const finding = object({
  rule: text('Id of the rule'),
  severity: words('', ['error', 'warning', 'note']),
  message: text('The consequence in print, the cause, the way out'),
  data: { type: 'object', description: 'Figures behind the message; each rule’s own' },
  waived: orNull(
    object({ reason: text('Why; empty where nobody said') }),
    'The team has decided to live with it: it does not count, and stands after those that do; null: it counts',
  ),
});

export const target = object({
  name: text('As the settings name it'),
  process: text('Process by its id'),
  paper: {
    description: 'Paper by its id, or its measured white',
    anyOf: [{ type: 'string' }, { type: 'object' }],
  },
  light: text('Light by its id'),
  route: words('What the print house does with the numbers', [...ROUTES, 'unknown']),
  encodings: orNull(list(words('', ENCODINGS)), 'Encodings that are taken; null: nobody said'),
  inkLimit: orNull(number('Percent'), 'Total ink limit; null: the process’s own'),
  profile: orNull(text(), 'Profile, relative to the root'),
  record: orNull(text(), 'Record, relative to the root'),
});

const level = object({ min: number('Smallest'), max: number('Largest'), mean: number('Mean') });

const chroma = object({
  max: number('Largest C* of a pixel'),
  mean: number('Mean C*'),
  share: share('Share of the area that strays from the picture’s tone line by more than the limit'),
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
    'Where layouts place it, by file and line',
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
  ppi: orNull(object({ x: number('Across'), y: number('Down') }), 'Pixels per inch by the file’s own header'),
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

/** What `check --format json` prints. */
export const checkReportSchema: Schema = {
  ...head('Evengrey: report of a check'),
  ...object({
    schema: { const: 1, description: 'Number of this contract' },
    book: object({
      root: { const: '.', description: 'Paths are relative to the book’s folder' },
      targets: list(
        target,
        'In the order of the settings; empty where nobody said where the book is printed',
      ),
    }),
    scope: orNull(
      object({
        which: text('As it ends "what is": `changed since main (...)`, `staged`, `named`'),
        unread: whole('Others that were not looked at: what compares pictures was not judged then'),
      }),
      'Set where only pictures that changed, or some by name, were checked; null: the whole book',
    ),
    pictures: list(
      picture,
      'Sorted by path, then page. Empty where no picture was found: then the check ends with exit code 2',
    ),
    findings: list(finding, 'About the book as a whole'),
    notices: list(
      { type: 'string' },
      'What was not looked at, and settings that concern nothing or cannot be',
    ),
    summary: object({
      pictures: whole('Pages of a file count each'),
      errors: whole('Findings'),
      warnings: whole('Findings'),
      notes: whole('Findings'),
      waived: whole('Findings that do not count among these'),
      attention: whole('Pictures that something is to be done with before the order'),
      encodings: {
        type: 'object',
        additionalProperties: whole('Pictures'),
        description: 'Pictures by encoding, replaced ones left out',
      },
    }),
  }),
};

/** What `forecast --format json` prints. */
export const forecastReportSchema: Schema = {
  ...head('Evengrey: forecasts'),
  ...object({
    of: object(
      {
        path: orNull(text(), 'The picture, as it was named'),
        page: orNull(whole('From 1', 1), 'Its page'),
        space: words('Colour model of the values', ['grey', 'rgb', 'cmyk', 'lab', null]),
        values: orNull(
          list({ type: 'number' }),
          'Stated values: inks in percent, R, G, B or grey 0-255 with 0 = black; null for a picture',
        ),
      },
      'What is forecast: a picture or a stated value',
    ),
    settings: orNull(
      object({
        file: text('As seen from the folder that the command was run in'),
        role: words(
          'used: they say how it is printed; silent: they say of no process; no-target: they have none for the process that was asked for; not-asked: a process was asked for, and these settings were not',
          ['used', 'silent', 'no-target', 'not-asked'],
        ),
        targets: list(
          { type: 'string' },
          'Those of their targets that are forecast, where they have several',
        ),
        changed: list({ type: 'string' }, 'Options that go before what they say'),
      }),
      'What settings have to do with it; null: none were asked, and none belong to the picture',
    ),
    forecasts: list(
      forecast,
      'By target or process, then light, as the settings or the command line list them',
    ),
  }),
};
