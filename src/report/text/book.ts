import { pagesInOrder } from '../../book/order';
import { count } from '../../rules/words';
import type { BookReport } from '../../shared/finding';
import type { Encoding } from '../../shared/picture';
import { encodings } from '../sheet/encoding';
import { begin, verdict } from './begin';
import { blockLines } from './block-lines';
import { blocksOf } from './blocks';
import { remarksOf } from './remarks';
import { type Paint, paintOf, type Style, safe } from './style';
import { targetLines } from './targets';
import { columns, flow, indent, wrap } from './wrap';

/** The report of a check for people: what to do first, findings by rule, worst first, how the pictures store their grey. */
export function bookText(unordered: BookReport, style: Style): string {
  const report = { ...unordered, pictures: pagesInOrder(unordered.pictures) };
  const paint = paintOf(style);
  const first = begin(unordered);
  // a line is enough where nothing was asked of any picture, as at a commit of something else
  const isIdle = report.summary.pictures === 0 && report.scope !== undefined;
  const targets = isIdle ? [] : targetLines(report);
  const sections = [
    [
      ...wrap(verdict(report), style.width).map(paint.bold),
      ...targets.flatMap(line => wrap(safe(line), style.width, report.targets.length && 2)),
    ],
    first ? wrap(safe(first), style.width) : [],
    ...blocksOf(report).map(block => blockLines(block, style, paint)),
    encodingLines(report, style, paint),
    ...remarksOf(report).map(lines => lines.flatMap(line => wrap(safe(line), style.width, 2))),
    isIdle ? [] : closing(report, style, paint),
  ];
  return `${sections
    .filter(lines => lines.length > 0)
    .map(lines => lines.join('\n'))
    .join('\n\n')}\n`;
}

function encodingLines({ summary }: BookReport, { width }: Style, paint: Paint): string[] {
  const counts = Object.entries(summary.encodings) as [Encoding, number][];
  if (!counts.length) return [];
  counts.sort(([x, m], [y, n]) => n - m || (x < y ? -1 : 1));
  const heads = columns(
    counts.map(([id, count]) => [String(count), id]),
    [0],
  );
  const by = Math.max(...heads.map(head => head.length)) + 2;
  const rows = counts.flatMap(([id], i) => {
    const [first, ...more] = wrap(lowered(encodings[id].name), width - 2 - by);
    return [heads[i].padEnd(by) + first, ...indent(more, by)];
  });
  return [paint.bold('How the pictures store their grey'), ...indent(rows, 2)];
}

function closing({ summary }: BookReport, { width }: Style, paint: Paint): string[] {
  const { errors, warnings, notes } = summary;
  const told = errors + warnings + notes > 0;
  return flow(
    [
      { text: `${count(summary.pictures, 'picture')}:` },
      { text: count(errors, 'error'), after: ',', paint: errors ? paint.red : undefined },
      { text: count(warnings, 'warning'), after: ',', paint: warnings ? paint.yellow : undefined },
      { text: `${count(notes, 'note')}.` },
      ...(told ? [{ text: '"evengrey explain RULE" tells more.', apart: 2, paint: paint.dim }] : []),
    ],
    width,
  );
}

const lowered = (text: string) => text[0].toLowerCase() + text.slice(1);
