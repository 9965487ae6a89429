// no-unit-test: test/report/json/index.test.ts validates reports against it, test/report/schemas.test.ts the schema itself
import { head, list, number, object, orNull, type Schema, share, text, whole, words } from './schema-parts';

const point = (description: string): Schema =>
  object({ a: number('CIELAB a*'), b: number('CIELAB b*') }, description);

/** What is done with the numbers of a picture. */
export const ROUTES = ['rgb', 'separated', 'inks', 'black-plate'];

const bands = object(
  {
    neutral: share('dCh below 1'),
    faint: share('1 to 2: seen beside a neutral only'),
    visible: share('2 to 4'),
    obvious: share('4 to 7'),
    heavy: share('above 7'),
  },
  "Sizes of the tint (dCh, distance from the grey aim in the a*b* plane) over all that a picture prints in all orders: each zone's own probabilities, weighed by area and visibility. They add up to 1. Of a stated value they are probabilities of orders; of a picture those are `seen` and `seenObvious`.",
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
  "The print's distance from the grey aim of its paper under the same light. A mean over many orders, not the colour that one order will have. Of a picture of black and white alone (one bit) these are figures of its solid black and the bare paper, and no odds that a tint is seen: there is no grey to be tinted.",
);

const spread = {
  house: point('One standard deviation from print house to print house, with what no data tell of any'),
  order: point('One standard deviation from order to order of one house, shared by all pages of an order'),
  page: point('One standard deviation within an order'),
  corr: number('Correlation of a* and b*, all of them together', { minimum: -1, maximum: 1 }),
};

const zone = object({
  L: number('Lightness L* in the file'),
  weight: share("Share of the picture's area"),
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

export const forecast: Schema = {
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
      spread: object({ ...spread, paper: point("The paper's own spread, which widens `absolute` only") }),
      parts: object(
        {
          paper: point('The grey aim of the paper'),
          process: point('The process with its reference encoding under D50'),
          encoding: point("This picture's encoding beside the reference"),
          light: point('Change from D50, relative to the paper under the same light'),
        },
        'tint = process + encoding + light, exactly',
      ),
      lightParts: object(
        {
          colourants: point(
            'Inks or dyes and paper under the light, the brightener shining as under D50 (metamerism)',
          ),
          brightener: point("What comes of the light's other share of ultraviolet"),
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
          "Share of the picture whose shades come out as black: blockedShare without the file's own black (its darkest tone, whatever that is in this encoding, and what lies within L* 1 of it)",
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
