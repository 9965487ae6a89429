import { visibleShare } from '../../print/bands';
import { forecastAs, type GreyEncoding, greyEncodings } from '../../print/restated';
import type { BookPicture } from '../../shared/finding';
import type { Forecast } from '../../shared/forecast';
import type { Encoding } from '../../shared/picture';
import type { Target } from '../../shared/target';
import { FEW, grouped, paths } from '../groups';
import { defineRule, type Verdict } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, ground, isPhotographic, processName } from '../targets';
import { count, encodingName, inOrders, list } from '../words';
import page from './README.md';

interface Options {
  gain: number;
  tell: number;
}

const messages = {
  one: 'This picture prints with a visible tint {now} on {process}, as {better} only {lower} ({ground}){target}. It is {encoding}; save it as {better}{ask}.{cost}',
  toned:
    'This picture prints with a visible tint {now} on {process}, as {better} {lower} ({ground}){target}: it carries a tone of its own. Save it as {better}, or list it under "toned" in the settings\' "intent" if the tone is meant.',
  many: '{pictures} print with a visible tint {now} on {process}, as {better} only {lower} ({ground}){target}. They are {encoding}; save them as {better}{ask}.{cost}',
  manyToned:
    '{pictures} print with a visible tint {now} on {process}, as {better} {lower} ({ground}){target}: they carry a tone of their own ({names}). Save them as {better}, or list them under "toned" in the settings\' "intent" if the tone is meant.',
  process:
    'On {process} the greys of this book come back with a visible tint {now} ({ground}){target}, and no other encoding of the files changes that much. {lean} Order a test print before the run.',
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
        default: 0.1,
        description:
          'Probability (0-1) of a visible tint, alike for all pictures, from which the book gets its one note.',
      },
    },
  },
  messages,
  page,
  *check({ pictures, targets }, { gain, tell }) {
    const prints = pictures
      .filter(({ facts }) => facts.encoding !== 'bilevel')
      .flatMap(picture => forecastsOf(picture).map(f => new Print(picture, f.target, f.forecast, gain)));
    for (const onTarget of grouped(prints, print => print.target.name)) {
      yield* fromFiles(onTarget, targets);
      yield* fromProcess(
        onTarget.filter(print => !print.better),
        tell,
        targets,
      );
    }
  },
});

const NEUTRAL: ReadonlySet<Encoding> = new Set(['rgb-neutral', 'single-channel', 'lab-neutral']);

interface Alternative {
  encoding: GreyEncoding;
  forecast: Forecast;
  probability: number;
}

/** A picture on one target, with the encoding that would serve it clearly better, if any. */
class Print {
  /** Of a tint that is seen without a neutral beside it. */
  readonly probability: number;
  readonly better: Alternative | null;
  constructor(
    readonly picture: BookPicture,
    readonly target: Target,
    readonly forecast: Forecast,
    gain: number,
  ) {
    this.probability = visibleShare(forecast.tint.bands);
    this.better = this.probability < gain ? null : this.best(gain);
  }

  private best(gain: number): Alternative | null {
    const { facts } = this.picture;
    // dyes are driven by R, G, B in the end: of two neutral encodings neither prints clearly better
    if (isPhotographic(this.target) && NEUTRAL.has(facts.encoding)) return null;
    const alternatives = takenBy(this.target)
      .filter(encoding => encoding !== facts.encoding)
      .flatMap(encoding => {
        const forecast = forecastAs(encoding, facts, this.target);
        return forecast ? [{ encoding, forecast, probability: visibleShare(forecast.tint.bands) }] : [];
      })
      .filter(({ probability }) => this.probability - probability >= gain);
    return alternatives.sort((x, y) => worth(x) - worth(y))[0] ?? null;
  }
}

/** Evenness first; of two that are nearly as even, the one with the deeper black. */
const worth = ({ probability, forecast }: Alternative) =>
  Math.round(probability * 10) * 100 + forecast.range.black;

/**
 * What the target takes. Where nobody said: R = G = B and one grey channel go everywhere, ink values where the route
 * keeps them or offset plates are made (common practice, no source).
 */
function takenBy(target: Target): GreyEncoding[] {
  if (target.encodings?.length) return greyEncodings.filter(encoding => target.encodings!.includes(encoding));
  const offset = target.process.startsWith('offset-') && target.route === 'unknown';
  const inks =
    !isPhotographic(target) && (offset || target.route === 'inks' || target.route === 'black-plate');
  return inks ? ['rgb-neutral', 'single-channel', 'black-only'] : ['rgb-neutral', 'single-channel'];
}

function* fromFiles(prints: Print[], targets: readonly Target[]): Iterable<Verdict> {
  const alike = grouped(prints, ({ picture, better }) => `${picture.facts.encoding} ${better?.encoding}`);
  for (const group of alike) {
    if (!group[0].better) continue;
    const sameEncoding = prints.filter(p => p.picture.facts.encoding === group[0].picture.facts.encoding);
    if (group.length > FEW && group.length * 2 > sameEncoding.length) yield forAll(group, targets);
    else for (const print of group) yield forOne(print, targets);
  }
}

function words({ picture, target, forecast, probability, better }: Print, targets: readonly Target[]) {
  const { encoding, forecast: other, probability: lowered } = better!;
  return {
    process: processName(target),
    target: forTarget(target, targets),
    ground: ground(forecast),
    encoding: encodingName(picture.facts.encoding),
    better: encoding,
    now: inOrders(probability),
    lower: inOrders(lowered),
    ask: target.encodings || encoding === 'rgb-neutral' ? '' : ', once the print house says that it takes it',
    cost: costOf(encoding, Math.round(forecast.range.black), Math.round(other.range.black)),
  };
}

/** What an encoding costs in range and smoothness, beside what it gains in evenness. */
function costOf(encoding: GreyEncoding, black: number, newBlack: number): string {
  const flatter = newBlack > black ? `black prints as L* ${newBlack} instead of ${black}` : '';
  const screen = encoding === 'black-only' ? 'sharp eyes see the screen of a grey of one ink' : '';
  const costs = [flatter, screen].filter(Boolean).join(', and ');
  return costs && ` The price: ${costs}.`;
}

const data = ({ target, forecast, probability, better }: Print) => ({
  target: target.name,
  probability,
  direction: forecast.tint.direction,
  better: better!.encoding,
  betterProbability: better!.probability,
  black: forecast.range.black,
  betterBlack: better!.forecast.range.black,
});

function forOne(print: Print, targets: readonly Target[]): Verdict {
  const { picture } = print;
  const template = picture.facts.encoding === 'rgb-toned' ? messages.toned : messages.one;
  return { picture, message: say(template, words(print, targets)), data: data(print) };
}

/** Told of the picture in the middle, so that "about" holds for the others too. */
function forAll(prints: Print[], targets: readonly Target[]): Verdict {
  const middle = prints.toSorted((x, y) => x.probability - y.probability)[prints.length >> 1];
  const names = paths(prints.map(({ picture }) => picture));
  const template = middle.picture.facts.encoding === 'rgb-toned' ? messages.manyToned : messages.many;
  return {
    message: say(template, {
      ...words(middle, targets),
      pictures: count(names.length, 'picture'),
      names: list(names),
    }),
    data: { ...data(middle), pictures: names },
  };
}

/** What the process does to all pictures alike: once for the book, and only worth knowing. */
function* fromProcess(prints: Print[], tell: number, targets: readonly Target[]): Iterable<Verdict> {
  if (prints.length === 0) return;
  const probability = prints.reduce((sum, print) => sum + print.probability, 0) / prints.length;
  if (probability < tell) return;
  const { target, forecast } = prints[0];
  const directions = new Set(prints.map(print => print.forecast.tint.direction));
  const direction = directions.size === 1 ? forecast.tint.direction : null;
  yield {
    message: say(messages.process, {
      process: processName(target),
      now: inOrders(probability),
      ground: ground(forecast),
      target: forTarget(target, targets),
      lean: direction
        ? `It leans ${direction} more often than not.`
        : 'Which way it leans cannot be predicted; a print that was read can tell.',
    }),
    data: { target: target.name, probability, direction, pictures: prints.length },
    note: true,
  };
}
