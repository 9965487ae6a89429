import type { Target } from '../../shared/target';
import { grouped, oneByOne, paths } from '../groups';
import { priceOf } from '../price';
import { asTaken } from '../recommended';
import { type BookView, defineRule, greyOrToned, type Verdict } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, guessOfInks, processName } from '../targets';
import { count, encodingName, inOrdersOfMany, leaning, list } from '../words';
import { betterBlackOf, blackOf, figuresOf } from './figures';
import { fromProcess, noteMessages } from './note';
import { isToBeGrey, lean, mean, type Print, printOf } from './prints';
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
  inks: 'On {process}{target} the tint and the black of this picture are left to whoever turns its inks into R, G, B: the process prints from those, and the picture is {encoding}. Save it as {save}.{figures}{price}{guess}',
  manyInks:
    'On {process}{target} the tint and the black of {pictures} are left to whoever turns their inks into R, G, B: the process prints from those, and they are {encoding} ({names}). Save them as {save}.{figures}{price}{guess}',
  ...noteMessages,
} as const;

export default defineRule<Options>({
  id: 'likely-tint',
  description:
    'A visible tint that another encoding would make clearly less likely, or inks for a process that has none.',
  severity: 'warning',
  scope: 'both',
  needs: 'forecast',
  intents: greyOrToned,
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
  *check({ pictures, targets, recommend, partial, isWaived }, { gain, tell }) {
    const prints = pictures
      .filter(isToBeGrey)
      .flatMap(picture =>
        forecastsOf(picture).map(({ target, forecast }) =>
          printOf(picture, target, forecast, recommend, gain),
        ),
      );
    for (const onTarget of grouped(prints, print => print.target.name)) {
      yield* fromFiles(onTarget, targets, isWaived);
      yield* fromProcess(onTarget, tell, targets, partial);
    }
  },
});

/** Alike are pictures in one encoding that are to become the same and lean the same way. */
function* fromFiles(
  prints: Print[],
  targets: readonly Target[],
  isWaived: BookView['isWaived'],
): Iterable<Verdict> {
  const alike = grouped(
    prints.filter(({ better }) => better),
    print => `${print.picture.facts.encoding} ${print.better!.recommendation.encoding} ${wayOf(print)}`,
  );
  for (const group of alike)
    yield* oneByOne(group, {
      ...{ one: print => forOne(print, targets), all: prints => forAll(prints, targets) },
      isWaived,
    });
}

const wayOf = (print: Print) => (print.foreign ? print.better!.comparable : lean([print])?.direction);

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
    figures: figuresOf(group),
    price: priceOf(encoding, target, group.map(blacksOf)),
    guess: guessOfInks(picture, forecast),
  };
}

const blacksOf = ({ forecast, better }: Print) => ({
  before: forecast.range,
  after: better!.forecast.range,
});

/** Of several pictures the means. */
function data(group: readonly Print[]) {
  const [{ target, forecast, better, foreign }] = group;
  return {
    target: target.name,
    basis: forecast.condition.basis,
    probability: mean(group.map(({ probability }) => probability)),
    direction: lean(group)?.direction ?? null,
    better: better!.recommendation.encoding,
    save: asTaken(better!.recommendation, target),
    ...(foreign && { foreign }),
    betterProbability: mean(group.map(print => print.better!.probability)),
    black: blackOf(group),
    betterBlack: betterBlackOf(group),
  };
}

function forOne(print: Print, targets: readonly Target[]): Verdict {
  const { picture } = print;
  return { picture, message: say(templatesOf(print).one, words([print], targets)), data: data([print]) };
}

function forAll(prints: Print[], targets: readonly Target[]): Verdict {
  const names = paths(prints.map(({ picture }) => picture));
  return {
    message: say(templatesOf(prints[0]).many, {
      ...words(prints, targets),
      pictures: count(names.length, 'picture'),
      names: list(names),
    }),
    data: { ...data(prints), pictures: names },
  };
}

function templatesOf({ picture, foreign }: Print) {
  if (foreign) return { one: messages.inks, many: messages.manyInks };
  return picture.facts.encoding === 'rgb-toned'
    ? { one: messages.toned, many: messages.manyToned }
    : { one: messages.one, many: messages.many };
}
