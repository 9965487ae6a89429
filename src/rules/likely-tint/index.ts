import { type Lean, leanOf } from '../../print/lean';
import type { BookPicture } from '../../shared/finding';
import type { Forecast } from '../../shared/forecast';
import type { Encoding } from '../../shared/picture';
import type { Target } from '../../shared/target';
import { FEW, grouped, paths } from '../groups';
import { priceOf } from '../price';
import { asTaken, comparable, forecastOf, type Recommend, type Recommendation } from '../recommended';
import { defineRule, type Verdict } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, guessOfInks, isPhotographic, processName } from '../targets';
import { count, encodingName, inOrders, inOrdersOfMany, leaning, leanName, list } from '../words';
import page from './README.md';

interface Options {
  gain: number;
  tell: number;
}

const messages = {
  one: 'By the forecast this picture prints with a visible tint{lean} {now} on {process}{target}, and {lower} as {better}. It is {encoding}; save it as {save}.{price}{guess}',
  toned:
    'By the forecast this picture prints with a visible tint{lean} {now} on {process}{target}, and {lower} as {better}: it carries a tone of its own. Save it as {save}, or list it under "toned" in the settings\' "intent" if the tone is meant.{price}{guess}',
  many: 'By the forecast {pictures} print with a visible tint{lean} {now} on {process}{target}, and {lower} as {better} ({names}). They are {encoding}; save them as {save}.{price}{guess}',
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
  *check({ pictures, targets, recommend, partial }, { gain, tell }) {
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
      yield* fromProcess(onTarget, tell, targets, partial);
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
  if (!forecast || !comparable(own.condition.reading, forecast.condition.reading, picture.facts.encoding))
    return null;
  if (chanceOf(own) - chanceOf(forecast) < gain) return null;
  return { recommendation, forecast, probability: chanceOf(forecast) };
}

/** Alike are pictures in one encoding that are to become the same and lean the same way. */
function* fromFiles(prints: Print[], targets: readonly Target[]): Iterable<Verdict> {
  const alike = grouped(
    prints.filter(({ better }) => better),
    print =>
      `${print.picture.facts.encoding} ${print.better!.recommendation.encoding} ${lean([print])?.direction}`,
  );
  for (const group of alike)
    if (group.length > FEW) yield forAll(group, targets);
    else for (const print of group) yield forOne(print, targets);
}

/** Told of all of `group`: chances as they range over it. */
function words(group: readonly Print[], targets: readonly Target[]) {
  const [{ picture, target, forecast, better }] = group;
  const { recommendation } = better!;
  const { encoding } = recommendation;
  return {
    process: processName(target),
    target: forTarget(target, targets),
    encoding: encodingName(picture.facts.encoding),
    better: encoding,
    save: asTaken(recommendation, target),
    now: inOrdersOfMany(group.map(({ probability }) => probability)),
    lower: inOrdersOfMany(group.map(print => print.better!.probability)),
    lean: leaning(lean(group)),
    price: priceOf(encoding, target, group.map(blacksOf)),
    guess: guessOfInks(picture, forecast),
  };
}

const lean = (prints: readonly Print[]) => leanOf(prints.map(({ forecast }) => forecast));

const blacksOf = ({ forecast, better }: Print) => ({
  before: forecast.range,
  after: better!.forecast.range,
});

/** Of several pictures the means. */
function data(group: readonly Print[]) {
  const [{ target, forecast, better }] = group;
  return {
    target: target.name,
    basis: forecast.condition.basis,
    probability: mean(group, ({ probability }) => probability),
    direction: lean(group)?.direction ?? null,
    better: better!.recommendation.encoding,
    save: asTaken(better!.recommendation, target),
    betterProbability: mean(group, print => print.better!.probability),
    black: mean(group, print => print.forecast.range.black),
    betterBlack: mean(group, print => print.better!.forecast.range.black),
  };
}

const mean = (prints: readonly Print[], value: (print: Print) => number) =>
  prints.reduce((sum, print) => sum + value(print), 0) / prints.length;

function forOne(print: Print, targets: readonly Target[]): Verdict {
  const { picture } = print;
  const template = picture.facts.encoding === 'rgb-toned' ? messages.toned : messages.one;
  return { picture, message: say(template, words([print], targets)), data: data([print]) };
}

function forAll(prints: Print[], targets: readonly Target[]): Verdict {
  const names = paths(prints.map(({ picture }) => picture));
  const template = prints[0].picture.facts.encoding === 'rgb-toned' ? messages.manyToned : messages.many;
  return {
    message: say(template, {
      ...words(prints, targets),
      pictures: count(names.length, 'picture'),
      names: list(names),
    }),
    data: { ...data(prints), pictures: names },
  };
}

/** What the process does to all pictures that no other encoding would serve: once, and only worth knowing. */
function* fromProcess(
  all: Print[],
  tell: number,
  targets: readonly Target[],
  partial: boolean,
): Iterable<Verdict> {
  const prints = all.filter(print => !print.better);
  if (prints.length === 0) return;
  const probability = mean(prints, print => print.probability);
  if (probability < tell) return;
  const { target, forecast } = prints[0];
  const way = sameWay(prints) ? lean(prints) : null;
  yield {
    message: say(messages.process, {
      process: processName(target),
      subject: subjectOf(prints.length, all.length, partial),
      now: inOrdersOfMany(prints.map(print => print.probability)),
      target: forTarget(target, targets),
      lean: leanOfAll(prints, way),
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

/** None of them leans another way than the next; some may lean none. */
const sameWay = (prints: readonly Print[]): boolean =>
  new Set(prints.flatMap(print => lean([print])?.direction ?? [])).size <= 1;

function leanOfAll(prints: readonly Print[], way: Lean | null): string {
  if (way) return `Faint tints counted too, it leans ${leanName(way)} ${inOrders(way.probability)}.`;
  return sameWay(prints)
    ? 'Which way it leans cannot be predicted; a measured print can tell.'
    : 'Which way it leans differs from picture to picture.';
}

/** Only of the pictures that are meant: the others have a finding of their own on the same target. */
function subjectOf(some: number, all: number, partial: boolean): string {
  if (some < all) return `${some} of ${all} grey pictures ${some === 1 ? 'comes' : 'come'}`;
  if (!partial) return 'all greys come';
  return all === 1 ? 'this grey comes' : `these ${all} greys come`;
}
