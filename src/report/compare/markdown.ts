import type { Comparison, PageChange, PictureChange } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import { unlisted } from '../asked';
import { CAUTION } from '../caution';
import { code, codeInText, words } from '../markdown/escape';
import { nameOf, sharedSentences } from '../text/blocks';
import { type Around, bookOf, pageCommand } from './around';
import { arrangedLines } from './arranged';
import { conditions, forecasts, remarks } from './conditions';
import { differencesOf, figuresAlone } from './differences';
import { headline } from './headline';
import { MOVED, movedTogether } from './moved';
import { type Apart, apartAtNames } from './named';
import { blocksNow, namesOf, otherLines, whyEnded, whyOthers } from './news';
import { setVerdict } from './set';
import { settingsLines } from './settings';
import { WAIVED, waivedLines } from './waived';
import { closing, happened, matched, revisions, stored, tints } from './words';
import { worstFirst } from './worst-first';

/** So many changed pictures have a row, so many messages of a rule are told: a comment has an end. */
const ROWS = 60;
const TOLD = 20;
/** So many pictures of one finding are named. */
const ALL = 300;

/** A comparison as a comment in a review: what the change does, whether it matches the book, a row a picture. */
export function comparisonMarkdown(comparison: Comparison, around: Around): string {
  const apart = apartAtNames(comparison);
  const prose = proseOf(apart, codeInText);
  const book = bookOf(around);
  const ended = blocksNow(comparison, 'ended').map(
    block =>
      `${block.severity} ${code(block.rule)}${block.entries.length ? `: ${namesOf(block).map(codeInText).join(', ')}` : ''}${whyEnded(block, comparison)}`,
  );
  const verdict = setVerdict(comparison);
  const { lines: moved, others } = movedTogether(comparison.changes);
  const sections = [
    `### Evengrey${book && `, ${words(book)}`}: ${prose(headline(comparison))}`,
    ...settingsLines(comparison).map(prose),
    verdict && `**The set:** ${prose(verdict)}`,
    bullets(WAIVED, waivedLines(comparison).map(prose)),
    bullets(MOVED, moved.map(words)),
    table(others, proseOf(apart, code), comparison.settings.off),
    words(figuresAlone(others)),
    bullets('Stand elsewhere, unchanged themselves', arrangedLines(comparison).map(prose)),
    news(comparison, prose),
    bullets('Findings that ended', ended),
    bullets(whyOthers(comparison), capped(otherLines(comparison).map(prose), TOLD)),
    bullets('To know', remarks(comparison).map(prose)),
    conditions(comparison).map(words).join('  \n'),
    [words(revisions(comparison)), words(closing(comparison))].join('  \n'),
    toLook(comparison, around),
    forecasts(comparison) ? words(CAUTION) : '',
  ];
  return `${sections.filter(Boolean).join('\n\n')}\n`;
}

/** Words with every name in them as code. */
type Prose = (text: string) => string;

const proseOf =
  (apart: Apart, mark: typeof code): Prose =>
  text =>
    apart(text)
      .map(piece => (piece.isName ? mark(piece.text) : words(piece.text)))
      .join('');

/** A comment shows no picture: how the same is seen, between the very commits that were compared. */
function toLook(comparison: Comparison, around: Around): string {
  const command = pageCommand(comparison, around);
  if (!command || !comparison.changes.some(({ pages }) => pages.length)) return '';
  const at = bookOf(around) ? 'at the root of the repository' : "in the book's folder";
  const which = around.branch
    ? ' (of the branch, since the merge that was compared is in no other clone)'
    : '';
  return `To look at the pictures before and after${which}, run ${at}: ${codeInText(command)}`;
}

/** Worst first, and on a narrow screen first what speaks against a picture. */
function table(changes: readonly PictureChange[], prose: Prose, off?: readonly string[]): string {
  if (!changes.length) return '';
  const rows = worstFirst(changes, off).flatMap(({ change }) =>
    change.pages.length ? change.pages.map(page => row(change, page, prose)) : [row(change, null, prose)],
  );
  return [
    '| Picture | New findings, and the set | What happened, and what is otherwise in it | How it is stored, and may print |',
    '| --- | --- | --- | --- |',
    ...rows.slice(0, ROWS),
    ...(rows.length > ROWS ? [`| and ${rows.length - ROWS} more | | | |`] : []),
  ].join('\n');
}

function row(change: PictureChange, page: PageChange | null, prose: Prose): string {
  const several = (lines: { target: string | null; words: string }[]) =>
    lines.map(
      line =>
        `${words(line.words)}${lines.length > 1 && line.target !== null ? ` (${words(line.target)})` : ''}`,
    );
  const fresh = page?.findings.new ?? [];
  const cells = [
    code(page ? nameOf(change.path, page.page) : change.path),
    lines(
      fresh.map(({ severity, rule }) => `${severity} ${code(rule)}`),
      (page?.waived ?? []).map(({ severity, rule }) => `waived: ${severity} ${code(rule)}`),
      page ? several(matched(page)) : [],
    ),
    lines(
      [prose(happened(change))],
      page ? differencesOf(page, change.bytes).map(each => words(each.words)) : [],
    ),
    page ? lines([words(stored(page))], several(tints(page))) : '',
  ];
  return `| ${cells.join(' | ')} |`;
}

/** In one cell. */
const lines = (...parts: readonly (readonly string[])[]): string => parts.flat().filter(Boolean).join('<br>');

/** What is new, by rule, with the way out; folded away, since the table names them. */
function news(comparison: Comparison, prose: Prose): string {
  const blocks = blocksNow(comparison, 'new');
  if (!blocks.length) return '';
  const inside = blocks.map(({ severity, rule, book, entries }) => {
    const shared = sharedSentences(entries.map(({ message }) => message));
    const lines = [
      ...book.flatMap(finding => [prose(finding.message), ...allOf(finding)]),
      ...entries.map(
        entry => `${entry.pictures.map(codeInText).join(', ')}: ${prose(entry.message.slice(shared.length))}`,
      ),
    ];
    const head = `**New ${severity}, ${code(rule)}**${shared ? `: ${prose(shared.trim())}` : ''}`;
    return [head, '', ...capped(lines, TOLD).map(line => `- ${line}`)].join('\n');
  });
  return [
    '<details>',
    '<summary>What is new, and the way out</summary>',
    '',
    inside.join('\n\n'),
    '',
    '</details>',
  ].join('\n');
}

/** Whom a message names the first of: a text says that they are all here. */
function allOf(finding: Finding): string[] {
  const names = unlisted(finding);
  return names.length ? [`All ${names.length}: ${capped(names.map(codeInText), ALL).join(', ')}`] : [];
}

const capped = (lines: readonly string[], most: number): string[] => [
  ...lines.slice(0, most),
  ...(lines.length > most ? [`and ${lines.length - most} more`] : []),
];

const bullets = (title: string, lines: readonly string[]): string =>
  lines.length ? [`**${title}**`, '', ...lines.map(line => `- ${line}`)].join('\n') : '';
