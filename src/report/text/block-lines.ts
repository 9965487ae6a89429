// no-unit-test: test/report/text/book.test.ts reads these lines
import { grouped } from '../../rules/groups';
import { percent } from '../../rules/words';
import type { Finding, Severity } from '../../shared/finding';
import { unlisted } from '../asked';
import { type Block, patternOf, sharedSentences } from './blocks';
import { type Paint, type Style, safe } from './style';
import { flow, indent, wrap } from './wrap';

/**
 * So many findings of a rule are told in full; of the rest only the names, and which of those told they are like. Notes
 * are told more shortly. Of errors each reason is told, however many there are: none can be left as it is.
 */
const IN_FULL: Record<Severity, number> = { error: 8, warning: 8, note: 2 };

/** The findings of one rule as a text: what all of them say once, then picture by picture. */
export function blockLines(block: Block, style: Style, paint: Paint): string[] {
  const concerned = block.count ? `  ${block.count} ${block.count === 1 ? 'picture' : 'pictures'}` : '';
  const heading = `${mark(block.severity, paint)}  ${paint.bold(block.rule)}${paint.dim(concerned)}`;
  const text = (words: string, by: number) => indent(wrap(safe(words), style.width - by), by);
  /** Each name whole, to be searched and copied. */
  const names = (pictures: readonly string[], end: string | null, by: number) => {
    const pieces = [...pictures, ...(end === null ? [] : [end])].map(safe);
    return indent(
      flow(
        pieces.map((piece, at) => ({ text: piece, after: at < pieces.length - 1 ? ',' : '' })),
        style.width - by,
      ),
      by,
    );
  };
  const shared = sharedSentences(block.entries.map(entry => entry.message));
  const full = toldInFull(block);
  const others = block.entries.filter(entry => !full.includes(entry));
  return [
    heading,
    ...block.book.flatMap(finding => text(finding.message + whereAll(finding), 2)),
    ...text(shared, 2),
    ...full.flatMap(({ pictures, message }) => [
      // the message speaks of one picture
      ...names(pictures, pictures.length > 1 ? 'of each:' : null, 2).map(paint.bold),
      ...text(message.slice(shared.length), 4),
    ]),
    ...grouped(others, entry => likeWhat(entry, full)).flatMap(group => [
      ...text(
        `and ${namesOf(group).length} more${likeWhat(group[0], full)}${rangeOf(group.flatMap(entry => entry.shares))}:`,
        2,
      ),
      ...names(namesOf(group), null, 4),
    ]),
  ];
}

/** A message names the first of many; the formats that name the others. */
function whereAll(finding: Finding): string {
  const { length } = unlisted(finding);
  return length ? ` All ${length} are named by "--format markdown" and "--format json".` : '';
}

type Entry = Block['entries'][number];

/** The first of each reason, then as many others as there is room for. */
function toldInFull({ entries, severity }: Block): Entry[] {
  const reasons = grouped(entries, entry => patternOf(entry.message));
  const firsts = reasons.map(([first]) => first);
  const room = IN_FULL[severity];
  const told = severity === 'error' ? firsts : firsts.slice(0, room);
  const more = entries.filter(entry => !firsts.includes(entry)).slice(0, Math.max(0, room - told.length));
  return entries.filter(entry => told.includes(entry) || more.includes(entry));
}

/** ` like a.tif`, where several reasons are told and this is one of them; ` for other reasons`, where it is not. */
function likeWhat(entry: Entry, full: readonly Entry[]): string {
  const reasons = new Set(full.map(({ message }) => patternOf(message)));
  if (!reasons.has(patternOf(entry.message))) return ' for other reasons';
  const same = full.find(({ message }) => patternOf(message) === patternOf(entry.message))!;
  return reasons.size > 1 ? ` like ${same.pictures[0]}` : '';
}

const namesOf = (entries: readonly Entry[]) => [...new Set(entries.flatMap(entry => entry.pictures))];

/** ` (12 to 31 % of the area)`, or nothing where the rule tells no share. */
function rangeOf(shares: readonly number[]): string {
  if (!shares.length) return '';
  const [least, most] = [Math.min(...shares), Math.max(...shares)].map(percent);
  return ` (${least === most ? least : `${least.replace(' %', '')} to ${most}`} of the area)`;
}

function mark(severity: Severity, paint: Paint): string {
  if (severity === 'error') return paint.red('ERROR');
  return severity === 'warning' ? paint.yellow('WARNING') : paint.cyan('NOTE');
}
