import type { Comparison, PageChange, PictureChange } from '../../shared/comparison';
import { CAUTION } from '../caution';
import { blockLines } from '../text/block-lines';
import { nameOf } from '../text/blocks';
import { type Paint, paintOf, type Style, safe } from '../text/style';
import { indent, wrap } from '../text/wrap';
import { type Around, bookOf } from './around';
import { arrangedLines } from './arranged';
import { conditions, forecasts, remarks } from './conditions';
import { differencesOf, figuresAlone } from './differences';
import { headline } from './headline';
import { MOVED, movedTogether } from './moved';
import { blocksNow, namesOf, otherLines, whyEnded, whyOthers } from './news';
import { setVerdict } from './set';
import { settingsLines } from './settings';
import { rulesOf, WAIVED, waivedLines } from './waived';
import { closing, happened, matched, revisions, stored, tints } from './words';
import { worstFirst } from './worst-first';

/** So many pictures that did not change themselves are named. */
const OTHERS = 12;

/** A comparison for people: what the change does to the book and what is new, then picture by picture, worst first. */
export function comparisonText(comparison: Comparison, around: Pick<Around, 'place'>, style: Style): string {
  const book = bookOf(around);
  const paint = paintOf(style);
  const text = (words: string, by = 0, hang = 0) => indent(wrap(safe(words), style.width - by, hang), by);
  const fresh = blocksNow(comparison, 'new');
  const ended = blocksNow(comparison, 'ended').map(block => {
    const names = namesOf(block);
    return `${block.severity} ${block.rule}${names.length ? `: ${names.join(', ')}` : ''}${whyEnded(block, comparison)}`;
  });
  const elsewhere = arrangedLines(comparison).flatMap(line => text(line, 2, 2));
  const waived = waivedLines(comparison).flatMap(line => text(line, 2, 2));
  const { lines: moved, others } = movedTogether(comparison.changes);
  const sections = [
    [
      ...text(`${book && `${book}: `}${headline(comparison)}`).map(paint.bold),
      ...text(revisions(comparison)),
    ],
    settingsLines(comparison).flatMap(line => text(line)),
    text(setVerdict(comparison)),
    ...(fresh.length ? [[paint.bold('New findings')]] : []),
    ...fresh.map(block => blockLines(block, style, paint)),
    waived.length ? [paint.bold(WAIVED), ...waived] : [],
    ...(others.length > 1 ? [[paint.bold('What changed, worst first')]] : []),
    ...worstFirst(others, comparison.settings.off).map(({ change }) => changeLines(change, text, paint)),
    text(figuresAlone(others)),
    moved.length ? [paint.bold(MOVED), ...moved.flatMap(line => text(line, 2, 2))] : [],
    elsewhere.length ? [paint.bold('Stand elsewhere, unchanged themselves'), ...elsewhere] : [],
    ended.length ? [paint.bold('Findings that ended'), ...ended.flatMap(line => text(line, 2, 2))] : [],
    otherSection(comparison, text, paint),
    conditions(comparison).flatMap(line => text(line, 0, 2)),
    remarks(comparison).flatMap(notice => text(notice, 0, 2)),
    forecasts(comparison) ? text(CAUTION) : [],
    text(closing(comparison)),
  ];
  return `${sections
    .filter(lines => lines.length > 0)
    .map(lines => lines.join('\n'))
    .join('\n\n')}\n`;
}

type Text = (words: string, by?: number, hang?: number) => string[];

function changeLines(change: PictureChange, text: Text, paint: Paint): string[] {
  const several = change.pages.length > 1;
  return [
    ...text(`${change.path}: ${happened(change)}`, 0, 2).map((line, i) => (i ? line : paint.bold(line))),
    ...change.pages.flatMap(page => [
      ...(several ? text(nameOf('', page.page).trim() || '(page 1)', 2) : []),
      ...pageLines(page, change).flatMap(line => text(line, several ? 4 : 2, 2)),
    ]),
  ];
}

function pageLines(page: PageChange, { bytes }: PictureChange): string[] {
  const on = (target: string | null, several: boolean) => (several && target !== null ? ` (${target})` : '');
  const seen = tints(page);
  const matches = matched(page);
  const same = page.findings.unchanged.map(({ rule }) => rule);
  const differences = differencesOf(page, bytes).map(({ words }) => words);
  return [
    ...(differences.length ? [differences.join('; ')] : []),
    stored(page),
    ...seen.map(({ target, words }) => `${words}${on(target, seen.length > 1)}`),
    ...matches.map(({ target, words }) => `${words}${on(target, page.matches.length > 1)}`),
    ...(same.length ? [`findings as before: ${[...new Set(same)].join(', ')}`] : []),
    ...(page.waived.length ? [`waived: ${rulesOf(page.waived)}`] : []),
  ].filter(Boolean);
}

function otherSection(comparison: Comparison, text: Text, paint: Paint): string[] {
  const all = otherLines(comparison);
  if (!all.length) return [];
  const more = all.length - OTHERS;
  return [
    ...text(whyOthers(comparison)).map(paint.bold),
    ...all.slice(0, OTHERS).flatMap(line => text(line, 2, 2)),
    ...(more > 0 ? [`  and ${more} more`] : []),
  ];
}
