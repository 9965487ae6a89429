import type { BookReport } from '../../shared/finding';
import type { Encoding } from '../../shared/picture';
import { encodings } from '../sheet/encoding';
import { begin, verdict } from './begin';
import { blockLines } from './block-lines';
import { blocksOf } from './blocks';
import { remarksOf } from './remarks';
import { type Paint, paintOf, type Style, safe } from './style';
import { targetLines } from './targets';
import { columns, indent, wrap } from './wrap';

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
