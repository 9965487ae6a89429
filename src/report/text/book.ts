import { percent } from '../../rules/words';
import type { BookReport, Severity } from '../../shared/finding';
import type { Encoding } from '../../shared/picture';
import { encodings } from '../sheet/encoding';
import { begin, verdict } from './begin';
import { type Block, blocksOf, sharedSentences } from './blocks';
import { remarksOf } from './remarks';
import { type Paint, paintOf, type Style, safe } from './style';
import { targetLines } from './targets';
import { columns, indent, wrap } from './wrap';

/** So many findings of a rule are told in full; of the rest only the names. Notes are told more shortly. */
const IN_FULL: Record<Severity, number> = { error: 8, warning: 8, note: 2 };

/** The report of a check for people: what to do first, findings by rule, worst first, how the pictures store their grey. */
export function bookText(report: BookReport, style: Style): string {
  const paint = paintOf(style);
  const first = begin(report);
  const sections = [
    [
      ...wrap(verdict(report), style.width).map(paint.bold),
      ...targetLines(report).flatMap(line => wrap(safe(line), style.width, report.targets.length && 2)),
    ],
    first ? wrap(safe(first), style.width) : [],
    ...blocksOf(report).map(block => blockLines(block, style, paint)),
    encodingLines(report, paint),
    ...remarksOf(report).map(lines => lines.flatMap(line => wrap(safe(line), style.width, 2))),
    [closing(report, paint)],
  ];
  return `${sections
    .filter(lines => lines.length > 0)
    .map(lines => lines.join('\n'))
    .join('\n\n')}\n`;
}

function blockLines(block: Block, style: Style, paint: Paint): string[] {
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

function encodingLines({ summary }: BookReport, paint: Paint): string[] {
  const counts = Object.entries(summary.encodings) as [Encoding, number][];
  if (!counts.length) return [];
  counts.sort(([x, m], [y, n]) => n - m || (x < y ? -1 : 1));
  const rows = counts.map(([id, count]) => [String(count), id, lowered(encodings[id].name)]);
  return [paint.bold('How the pictures store their grey'), ...indent(columns(rows, [0]), 2)];
}

function closing({ summary }: BookReport, paint: Paint): string {
  const part = (count: number, word: string) => `${count} ${word}${count === 1 ? '' : 's'}`;
  const counts = [
    summary.errors ? paint.red(part(summary.errors, 'error')) : part(0, 'error'),
    summary.warnings ? paint.yellow(part(summary.warnings, 'warning')) : part(0, 'warning'),
    part(summary.notes, 'note'),
  ];
  const help =
    summary.errors + summary.warnings + summary.notes
      ? paint.dim('  "evengrey explain RULE" tells more.')
      : '';
  return `${part(summary.pictures, 'picture')}: ${counts.join(', ')}.${help}`;
}

const lowered = (text: string) => text[0].toLowerCase() + text.slice(1);
