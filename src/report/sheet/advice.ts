import { visibleShare } from '../../print/bands';
import { inOrders } from '../../rules/words';
import type { Finding, PictureReport } from '../../shared/finding';
import type { Forecast } from '../../shared/forecast';
import type { Encoding } from '../../shared/picture';
import type { Advice } from '../../shared/sheet';

/** Routes whose chances of a visible tint differ by more than this are worth a question. */
const WORTH_ASKING = 0.3;

/** What each rule asks for, and why in one sentence. In the order in which one thing has to be done before another. */
const byRule: Record<string, Advice> = {
  unreadable: mend('The file could not be read: nobody knows what would be printed.'),
  'not-fetched': {
    kind: 'mend',
    title: 'Fetch the picture first',
    reason: 'What lies here is only a pointer to it.',
  },
  'encoding-not-accepted': convert('The print house does not take pictures that are stored like this.'),
  'unbalanced-grey': convert('Its inks do not make a grey on this press.'),
  'ink-total': convert('It asks for more ink than the paper holds.'),
  'residual-chroma': convert('Colour that was left in it would be seen in print.'),
  'mixed-encodings': convert('It is stored unlike the others around it, and would print unlike them.'),
  'likely-tint': convert('Stored in another way that is taken, it would print with less of a tint.'),
  'tone-mismatch': convert('Its tone is not that of the picture it should match.'),
  'profile-mismatch': ask('Its profile is not the one that the target names.'),
  'low-resolution': mend('It has too few pixels for the size at which it is placed.'),
};

function convert(reason: string): Advice {
  return { kind: 'convert', title: 'Convert it first', reason };
}
function ask(reason: string): Advice {
  return { kind: 'ask', title: 'Ask the print house', reason };
}
function mend(reason: string): Advice {
  return { kind: 'mend', title: 'Put the file right first', reason };
}

/** What to do with a picture, with one reason. Notes ask for nothing. */
export function adviceOn({ facts, intent, intentStated, findings, forecasts }: PictureReport): Advice {
  const urgent = findings.filter((f: Finding) => f.severity !== 'note').map(f => f.rule);
  const rule = Object.keys(byRule).find(id => urgent.includes(id));
  if (rule) return byRule[rule];
  if (facts.unreadable) return mend(facts.unreadable.text);
  if (facts.encoding === 'colour' && !intentStated)
    return leave('It is in colour, and nobody said what it is meant to be.');
  if (intent === 'colour' || intent === 'line')
    return leave(`It is meant to be ${intent === 'line' ? 'line work' : 'in colour'}.`);
  // what becomes of RGB and grey is the same question for every picture of the book, not one of this picture
  return (facts.space === 'cmyk' && openQuestion(forecasts)) || send(facts.encoding, forecasts);
}

const leave = (reason: string): Advice => ({ kind: 'leave', title: 'Nothing to judge', reason });

/** Where nobody said what happens to the inks of a file, and it matters. */
function openQuestion(forecasts: readonly Forecast[]): Advice | undefined {
  for (const { routes = [] } of forecasts) {
    const sorted = [...routes].sort((x, y) => visibleShare(x.tint.bands) - visibleShare(y.tint.bands));
    const [best, worst] = [sorted[0], sorted[sorted.length - 1]];
    if (best && visibleShare(worst.tint.bands) - visibleShare(best.tint.bands) > WORTH_ASKING)
      return ask(
        `It depends on what is done with the numbers. ${best.label}: a tint is seen ${inOrders(visibleShare(best.tint.bands))}. ${worst.label}: ${inOrders(visibleShare(worst.tint.bands))}.`,
      );
  }
}

function send(encoding: Encoding, forecasts: readonly Forecast[]): Advice {
  const chance = Math.max(...forecasts.map(({ tint }) => visibleShare(tint.bands)));
  const worst = `${inOrders(chance)}${forecasts.length > 1 ? ' at worst' : ''}`;
  let tint = '';
  if (encoding === 'rgb-toned') tint = ' Its own tone prints, and the process adds to it.';
  else if (forecasts.length) tint = ` A tint is seen ${worst}.`;
  return {
    kind: 'send',
    title: 'Send it as it is',
    reason: `Nothing in the file stands against it.${tint} Have a test print made before the run.`,
  };
}
