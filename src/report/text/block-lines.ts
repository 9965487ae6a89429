// no-unit-test: test/report/text/book.test.ts reads these lines
import { percent } from '../../rules/words';
import type { Severity } from '../../shared/finding';
import { type Block, sharedSentences } from './blocks';
import { type Paint, type Style, safe } from './style';
import { indent, wrap } from './wrap';

/** So many findings of a rule are told in full; of the rest only the names. Notes are told more shortly. */
const IN_FULL: Record<Severity, number> = { error: 8, warning: 8, note: 2 };

/** The findings of one rule as a text: what all of them say once, then picture by picture. */
export function blockLines(block: Block, style: Style, paint: Paint): string[] {
  const concerned = block.count ? `  ${block.count} ${block.count === 1 ? 'picture' : 'pictures'}` : '';
  const heading = `${mark(block.severity, paint)}  ${paint.bold(block.rule)}${paint.dim(concerned)}`;
  const text = (words: string, by: number) => indent(wrap(safe(words), style.width - by), by);
  const shared = sharedSentences(block.entries.map(entry => entry.message));
  const full = block.entries.slice(0, IN_FULL[block.severity]);
  const others = block.entries.slice(full.length);
  const rest = [...new Set(others.flatMap(entry => entry.pictures))];
  return [
    heading,
    ...block.book.flatMap(({ message }) => text(message, 2)),
    ...text(shared, 2),
    ...full.flatMap(({ pictures, message }) => [
      ...text(pictures.join(', '), 2).map(paint.bold),
      ...text(message.slice(shared.length), 4),
    ]),
    ...(rest.length
      ? [
          ...text(`and ${rest.length} more${rangeOf(others.flatMap(entry => entry.shares))}:`, 2),
          ...text(rest.join(', '), 4),
        ]
      : []),
  ];
}

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
