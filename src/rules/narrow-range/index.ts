import { fileRange } from '../../print/file-range';
import type { BookPicture } from '../../shared/finding';
import type { Target } from '../../shared/target';
import { takes } from '../accepted';
import { blackWords, isOpen } from '../black';
import { grouped } from '../groups';
import { isOneTone } from '../one-tone';
import { defineRule, greyOrToned, type Verdict } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, processName } from '../targets';
import page from './README.md';

interface Options {
  picture: number;
  process: number;
}

const messages = {
  flat: 'This picture prints flat beside its neighbours: nearly all of it lies between L* {from} and L* {to} of the file, so it has neither a black nor a white. Spread its tones with a curve, or leave it so if the haze is meant.',
  light:
    'This picture prints pale beside its neighbours: nearly all of it lies between L* {from} and L* {to} of the file, so it has no black. Spread its tones with a curve, or leave it so if it is meant to be light, as mist and snow are.',
  dark: 'This picture prints dark all over beside its neighbours: nearly all of it lies between L* {from} and L* {to} of the file, so it has no white. Spread its tones with a curve, or leave it so if it is meant to be dark, as a night is.',
  process:
    'On {process} every picture prints flatter than it looks on a screen{target}: by the forecast black is about L* {black}{ways} and the paper L* {white}. Set the pictures a little harder in the mid-tones, all of them alike, and judge it on a test print.',
} as const;

export default defineRule<Options>({
  id: 'narrow-range',
  description: 'Few tones between the darkest and the lightest, in the file or on the process.',
  severity: 'note',
  scope: 'both',
  needs: 'pixels',
  intents: greyOrToned,
  options: {
    type: 'object',
    additionalProperties: false,
    properties: {
      picture: {
        type: 'number',
        minimum: 0,
        maximum: 100,
        default: 40,
        description: 'Range of L* in the file below which a picture is named.',
      },
      process: {
        type: 'number',
        minimum: 0,
        maximum: 100,
        default: 70,
        description: 'Range of L* in print, black to paper, below which the book gets a note.',
      },
    },
  },
  messages,
  page,
  *check({ pictures, targets }, options) {
    const tonal = pictures.filter(({ facts }) => facts.tone && facts.encoding !== 'bilevel');
    for (const picture of tonal) {
      const { from, to } = fileRange(picture.facts.tone!.histogram);
      if (to - from >= options.picture || isOneTone(picture.facts.tone!)) continue;
      yield {
        picture,
        message: say(messages[kindOf(from, to)], { from, to }),
        data: { from, to },
      };
    }
    yield* fromProcess(tonal, options.process, targets);
  },
});

/** Nothing darker is a picture without a black, nothing lighter one without a white, whatever else is missing. Own choice. */
const BLACK = 25;
const WHITE = 85;

function kindOf(from: number, to: number): 'flat' | 'light' | 'dark' {
  if (from > BLACK && to < WHITE) return 'flat';
  return from > 100 - to ? 'light' : 'dark';
}

/**
 * The range of the picture with the deepest black, so that one flat encoding is not blamed on the process; of those that the
 * print house takes as they are, so that one which it refuses does not stand for a black that the others never get.
 */
function* fromProcess(pictures: BookPicture[], limit: number, targets: readonly Target[]): Iterable<Verdict> {
  const all = pictures.flatMap(picture => forecastsOf(picture).map(print => ({ ...print, picture })));
  for (const prints of grouped(all, ({ target }) => target.name)) {
    const sent = prints.filter(({ target, picture }) => takes(target, picture));
    const deepest = (sent.length ? sent : prints).reduce((best, print) =>
      print.forecast.range.black < best.forecast.range.black ? print : best,
    );
    const { range } = deepest.forecast;
    const { black, white } = range;
    if (white - black >= limit) continue;
    yield {
      message: say(messages.process, {
        process: processName(deepest.target),
        target: forTarget(deepest.target, targets),
        black: blackWords(range),
        ways: isOpen(range) ? ', by how the house prints it,' : '',
        white: Math.round(white),
      }),
      data: { target: deepest.target.name, basis: deepest.forecast.condition.basis, black, white },
      note: true,
    };
  }
}
