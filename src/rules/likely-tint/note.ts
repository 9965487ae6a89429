import { forecastPicture } from '../../print';
import type { Lean } from '../../print/lean';
import type { Target } from '../../shared/target';
import { paths } from '../groups';
import type { Verdict } from '../rule';
import { say } from '../say';
import { forTarget, processName } from '../targets';
import { count, inOrders, inOrdersOfMany, leanName, list } from '../words';
import { lean, mean, type Print } from './prints';
import { questionOf } from './question';

export const noteMessages = {
  process:
    'By the forecast {subject} back from {process}{target} with a visible tint {now}{light}; {other} {lean}{question} Order a test print before the run.',
  counter:
    'By the forecast {subject} back from {process}{target} with a visible tint {now}{light}, counter-tint and all: it answers the mean of what was read of this house, not how far the next order differs from that. {lean}{question} Order a test print before the run.',
} as const;

/** So many pictures tell how a book looks in daylight. Own choice. */
const SAMPLE = 25;

/**
 * What the process does to all pictures that no other encoding would serve: once, and only worth knowing. Figures that
 * rest on readings of the house's prints and those that rest on none are told apart, and so are counter-tinted pictures.
 * `tell`: probability from which on it is told; where
 * much hangs on what the house does, it is always.
 */
export function* fromProcess(
  all: readonly Print[],
  tell: number,
  targets: readonly Target[],
  partial: boolean,
): Iterable<Verdict> {
  const plain = all.filter(print => !print.better && !print.corrected);
  const [read, unread] = [true, false].map(isRead =>
    plain.filter(({ forecast }) => (forecast.condition.reading !== null) === isRead),
  );
  const split = read.length > 0 && unread.length > 0;
  for (const prints of [read, unread, all.filter(({ corrected }) => corrected)]) {
    if (prints.length === 0) continue;
    const probability = mean(prints.map(print => print.probability));
    const question = questionOf(prints);
    if (probability < tell && !question) continue;
    const [{ target, forecast, corrected }] = prints;
    const way = sameWay(prints) ? lean(prints) : null;
    const words = {
      process: processName(target),
      target: forTarget(target, targets),
      subject: corrected
        ? `${count(prints.length, 'counter-tinted picture')} ${come(prints.length)}`
        : subjectOf(prints, all.length, split, partial),
      now: inOrdersOfMany(prints.map(print => print.probability)),
      light: inLight(prints),
      lean: leanOfAll(prints, way, corrected ? '' : '; a measured print can tell'),
      question: question ? ` ${question}` : '',
    };
    yield {
      message: corrected
        ? say(noteMessages.counter, words)
        : say(noteMessages.process, { ...words, other: otherOf(prints) }),
      data: {
        target: target.name,
        basis: forecast.condition.basis,
        probability,
        direction: way?.direction ?? null,
        counted: paths(prints.map(({ picture }) => picture)),
        // what to ask the print house, in words
        ...(question && { ask: question }),
      },
      note: true,
    };
  }
}

/** What another encoding would change. */
function otherOf(prints: readonly Print[]): string {
  const readings = prints[0].target.printRecord?.readings ?? [];
  if (!prints.some(({ open }) => open)) return 'another encoding would not change that much.';
  const names = readings.map(({ encoding }) => encoding);
  return `what another encoding would change is not known, since of this house only prints of ${list(names, names.length)} were read.`;
}

/** Under another light than daylight, how much of it is the print's own. */
function inLight(prints: readonly Print[]): string {
  const [{ target }] = prints;
  if (target.light === 'D50') return '';
  const step = Math.ceil(prints.length / SAMPLE);
  const some = prints.filter((_, i) => i % step === 0);
  const day = some.map(({ picture, probability }) => {
    const forecast = forecastPicture(picture.facts, { ...target, light: 'D50' });
    return forecast ? forecast.tint.seen : probability;
  });
  return ` as seen under ${target.light} (in daylight ${inOrders(day.reduce((x, y) => x + y) / day.length)})`;
}

/** None of them leans another way than the next; some may lean none. */
const sameWay = (prints: readonly Print[]): boolean =>
  new Set(prints.flatMap(print => lean([print])?.direction ?? [])).size <= 1;

/** `tells`: what may yet tell where nothing does. */
function leanOfAll(prints: readonly Print[], way: Lean | null, tells: string): string {
  if (way) return `Faint tints counted too, it leans ${leanName(way)} ${inOrders(way.probability)}.`;
  return sameWay(prints)
    ? `Which way it leans cannot be predicted${tells}.`
    : 'Which way it leans differs from picture to picture.';
}

/**
 * Only of the pictures that are meant: the others have a finding of their own on the same target. `split`: they are told
 * from others by what was read.
 */
function subjectOf(prints: readonly Print[], all: number, split: boolean, partial: boolean): string {
  const some = prints.length;
  const kinds = [...new Set(prints.map(({ picture }) => picture.facts.encoding))];
  const which = split ? ` (${list(kinds, kinds.length)})` : '';
  if (some < all) return `${some} of ${all} grey pictures${which} ${come(some)}`;
  if (!partial) return 'all greys come';
  return all === 1 ? 'this grey comes' : `these ${all} greys come`;
}

const come = (many: number) => (many === 1 ? 'comes' : 'come');
