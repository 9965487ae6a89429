import { type Lean, leanOf } from '../../print/lean';
import type { BookPicture } from '../../shared/finding';
import type { Forecast } from '../../shared/forecast';
import type { Encoding } from '../../shared/picture';
import type { Target } from '../../shared/target';
import { FEW, grouped, paths } from '../groups';
import { priceOf } from '../price';
import { asTaken, forecastOf, type Recommend, type Recommendation } from '../recommended';
import { defineRule, type Verdict } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, guessOfInks, isPhotographic, processName } from '../targets';
import { count, encodingName, inOrders, inOrdersOfMany, leanName, list, mostly } from '../words';
import page from './README.md';

interface Options {
  gain: number;
  tell: number;
}

const messages = {
  one: 'By the forecast this picture prints with a visible tint{lean} {now} on {process}{target}, and {lower} as {better}. It is {encoding}; save it as {save}.{price}{guess}',
  toned:
    'By the forecast this picture prints with a visible tint{lean} {now} on {process}{target}, and {lower} as {better}: it carries a tone of its own. Save it as {save}, or list it under "toned" in the settings\' "intent" if the tone is meant.{price}{guess}',
  many: 'By the forecast {pictures} print with a visible tint{lean} {now} on {process}{target}, and {lower} as {better}. They are {encoding}; save them as {save}.{price}{guess}',
  manyToned:
    'By the forecast {pictures} print with a visible tint{lean} {now} on {process}{target}, and {lower} as {better}: they carry a tone of their own ({names}). Save them as {save}, or list them under "toned" in the settings\' "intent" if the tone is meant.{price}{guess}',
  process:
    'By the forecast {subject} back from {process}{target} with a visible tint {now}; another encoding would not change that much. {lean} Order a test print before the run.',
} as const;

export default defineRule<Options>({
  id: 'likely-tint',
  description: 'A visible tint that another encoding would make clearly less likely.',
  severity: 'warning',
  scope: 'both',
  needs: 'forecast',
  intents: ['grey'],
  options: {
    type: 'object',
    additionalProperties: false,
    properties: {
      gain: {
        type: 'number',
        minimum: 0.05,
        maximum: 1,
        default: 0.2,
        description:
          'How much another encoding must lower the probability (0-1) of a visible tint before a picture is named.',
      },
      tell: {
        type: 'number',
        minimum: 0,
        maximum: 1,
        default: 0.2,
        description:
          'Probability (0-1) of a visible tint, alike for all pictures, from which the book gets its one note.',
      },
    },
  },
  messages,
  page,
  *check({ pictures, targets, recommend }, { gain, tell }) {
    const prints = pictures
      .filter(({ facts }) => facts.encoding !== 'bilevel')
      .flatMap(picture =>
        forecastsOf(picture).map(
          ({ target, forecast }) =>
            new Print(picture, target, forecast, betterOf(picture, target, forecast, recommend, gain)),
        ),
      );
    for (const onTarget of grouped(prints, print => print.target.name)) {
      yield* fromFiles(onTarget, targets);
      yield* fromProcess(onTarget, tell, targets);
    }
  },
});

const NEUTRAL: ReadonlySet<Encoding> = new Set(['rgb-neutral', 'single-channel', 'lab-neutral']);

interface Alternative {
  recommendation: Recommendation;
  forecast: Forecast;
  probability: number;
}

/** Probability that an order shows a tint that is seen without a neutral beside it. */
const chanceOf = ({ tint }: Forecast) => tint.seen;

/** A picture on one target, with the recommended encoding where that would serve it clearly better. */
class Print {
  readonly probability: number;
  constructor(
    readonly picture: BookPicture,
    readonly target: Target,
    readonly forecast: Forecast,
    readonly better: Alternative | null,
  ) {
    this.probability = chanceOf(forecast);
  }
}

function betterOf(
  picture: BookPicture,
  target: Target,
  own: Forecast,
  recommend: Recommend,
  gain: number,
): Alternative | null {
  if (chanceOf(own) < gain) return null;
  const recommendation = recommend(picture, target);
  if (!recommendation || recommendation.encoding === picture.facts.encoding) return null;
  // dyes are driven by R, G, B in the end: of two neutral encodings neither prints clearly better
  if (isPhotographic(target) && NEUTRAL.has(picture.facts.encoding)) return null;
  const forecast = forecastOf(recommendation, picture, target);
  if (!forecast || chanceOf(own) - chanceOf(forecast) < gain) return null;
  return { recommendation, forecast, probability: chanceOf(forecast) };
}

function* fromFiles(prints: Print[], targets: readonly Target[]): Iterable<Verdict> {
  const alike = grouped(
    prints,
    ({ picture, better }) => `${picture.facts.encoding} ${better?.recommendation.encoding}`,
  );
  for (const group of alike) {
    if (!group[0].better) continue;
    const sameEncoding = prints.filter(p => p.picture.facts.encoding === group[0].picture.facts.encoding);
    if (group.length > FEW && group.length * 2 > sameEncoding.length) yield forAll(group, targets);
    else for (const print of group) yield forOne(print, targets);
  }
}

/** Of `print`, told for all of `group`. */
function words(print: Print, group: readonly Print[], targets: readonly Target[]) {
  const { picture, target, forecast, probability, better } = print;
  const { recommendation, probability: lowered } = better!;
  const { encoding } = recommendation;
  const way = lean(group);
  return {
    process: processName(target),
    target: forTarget(target, targets),
    encoding: encodingName(picture.facts.encoding),
    better: encoding,
    save: asTaken(recommendation, target),
    now: inOrders(probability),
    lower: inOrders(lowered),
    lean: way ? `, ${mostly(way)} ${leanName(way)},` : '',
    price: priceOf(encoding, target, group.map(blacksOf)),
    guess: guessOfInks(picture, forecast),
  };
}

const lean = (prints: readonly Print[]) => leanOf(prints.map(({ forecast }) => forecast));

const blacksOf = ({ forecast, better }: Print) => ({
  before: forecast.range.black,
  after: better!.forecast.range.black,
});

const data = ({ target, forecast, probability, better }: Print, way: Lean | null) => ({
  target: target.name,
  basis: forecast.condition.basis,
  probability,
  direction: way?.direction ?? null,
  better: better!.recommendation.encoding,
  betterProbability: better!.probability,
  black: forecast.range.black,
  betterBlack: better!.forecast.range.black,
});

function forOne(print: Print, targets: readonly Target[]): Verdict {
  const { picture } = print;
  const template = picture.facts.encoding === 'rgb-toned' ? messages.toned : messages.one;
  return {
    picture,
    message: say(template, words(print, [print], targets)),
    data: data(print, lean([print])),
  };
}

/** Told of the picture in the middle, so that "about" holds for the others too. */
function forAll(prints: Print[], targets: readonly Target[]): Verdict {
  const middle = prints.toSorted((x, y) => x.probability - y.probability)[prints.length >> 1];
  const names = paths(prints.map(({ picture }) => picture));
  const template = middle.picture.facts.encoding === 'rgb-toned' ? messages.manyToned : messages.many;
  return {
    message: say(template, {
      ...words(middle, prints, targets),
      pictures: count(names.length, 'picture'),
      names: list(names),
    }),
    data: { ...data(middle, lean(prints)), pictures: names },
  };
}

/** What the process does to all pictures that no other encoding would serve: once, and only worth knowing. */
function* fromProcess(all: Print[], tell: number, targets: readonly Target[]): Iterable<Verdict> {
  const prints = all.filter(print => !print.better);
  if (prints.length === 0) return;
  const probability = prints.reduce((sum, print) => sum + print.probability, 0) / prints.length;
  if (probability < tell) return;
  const { target, forecast } = prints[0];
  const way = lean(prints);
  yield {
    message: say(messages.process, {
      process: processName(target),
      subject: subjectOf(prints.length, all.length),
      now: inOrdersOfMany(prints.map(print => print.probability)),
      target: forTarget(target, targets),
      lean: way
        ? `Faint tints counted too, it leans ${leanName(way)} ${inOrders(way.probability)}.`
        : 'Which way it leans cannot be predicted; a measured print can tell.',
    }),
    data: {
      target: target.name,
      basis: forecast.condition.basis,
      probability,
      direction: way?.direction ?? null,
      pictures: paths(prints.map(({ picture }) => picture)),
    },
    note: true,
  };
}

/** Only of the pictures that are meant: the others have a finding of their own on the same target. */
function subjectOf(some: number, all: number): string {
  if (some === all) return 'all greys come';
  return some === 1 ? 'the one other grey picture comes' : `the other ${some} grey pictures come`;
}
