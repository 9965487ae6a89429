import { adviceFor, type EncodingAdvice } from '../../print';
import { blackWords } from '../../rules/black';
import type { Forecast } from '../../shared/forecast';
import type { Encoding } from '../../shared/picture';
import type { Condition, EncodingLine } from '../../shared/sheet';
import type { Target } from '../../shared/target';
import { evenOf, inTen } from '../text/advice';

/** Every picture of a book asks for the same few targets; a target that was read anew is another object. */
const known = new WeakMap<Target, EncodingAdvice[]>();

/** What each encoding would do under a target; `own`: how the picture is stored. */
export function encodingLines(target: Target, own: Encoding): EncodingLine[] {
  let advice = known.get(target);
  if (!advice) known.set(target, (advice = adviceFor(target)));
  return advice.map(line => ({
    encoding: line.encoding,
    even: evenOf(line),
    black: blackWords(line),
    ground: line.ground,
    own: line.encoding === own,
  }));
}

/** The picture itself, in the words of `lines`: its own tones and its own balance, not those of a sound grey. */
export function ownLine(
  { tint, range, condition }: Forecast,
  lines: readonly EncodingLine[],
): Condition['own'] {
  const even = 10 * (1 - tint.seen);
  const alike = lines.find(({ own }) => own);
  return {
    even: even < 0.5 ? 'below 1' : inTen(even),
    black: blackWords(range),
    ground: alike?.ground ?? (condition.basis === 'generic' ? 'guess' : 'measured'),
  };
}
