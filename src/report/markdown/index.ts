import { pagesInOrder } from '../../book/order';
import { count, list } from '../../rules/words';
import type { BookReport, Finding, Severity } from '../../shared/finding';
import { unlisted } from '../asked';
import { CAUTION } from '../caution';
import { closing } from '../counts';
import { begin, dutiesOf, sameWork, verdict, type Work } from '../text/begin';
import { type Block, blocksOf, nameOf, sharedSentences } from '../text/blocks';
import { remarksOf } from '../text/remarks';
import { targetLines } from '../text/targets';
import { rank } from '../told';
import type { Done, Trouble } from '../trouble';
import { WRITTEN_BY } from '../written-by';
import { code, codeInText, words } from './escape';

/**
 * So many pictures are named beside what is to be done with them, under a finding, and of a finding about the book; of the
 * rest the number.
 */
const NAMED = { task: 4, finding: 20, book: 300 };
/** So many messages of a rule are told: a comment has an end. */
const TOLD = 30;

/**
 * The report of a check as a comment in a review: whether the book can be ordered, what to do with which pictures, what
 * concerns all of them; the findings themselves are folded away below. `book`: its folder in the repository.
 */
export function bookMarkdown(
  report: BookReport,
  troubles: readonly Trouble[] = [],
  done: Done = 'checked',
  book = '',
): string {
  const heading = `### Evengrey${book && `, ${words(book)}`}:`;
  if (troubles.length && !report.pictures.length)
    return `${heading} Nothing was ${done}\n\n${bullets('Why', troubles.map(trouble))}\n`;
  const tasks = tasksOf(report);
  const sections = [
    `${heading} ${words(verdict(report))}`,
    bullets('Why not all was checked', troubles.map(trouble)),
    words(closing(report.summary)),
    // with a table of tasks the first row says it
    tasks.length ? taskTable(tasks) : words(begin(report) ?? ''),
    bullets('For the whole book', report.findings.map(finding)),
    bullets('To know', remarksOf(report).flat().map(words)),
    details(blocksOf({ ...report, pictures: pagesInOrder(report.pictures) })),
    targetLines(report).map(words).join('  \n'),
    report.targets.length ? words(CAUTION) : '',
    `${codeInText('evengrey check --format html --output report.html')} makes a page with the pictures. ${words(WRITTEN_BY)}`,
  ];
  return `${sections.filter(Boolean).join('\n\n')}\n`;
}

/** Pictures that want the same for the same reason. */
type Task = [Work, ...Work[]];

/** Worst first, then what concerns most pictures. */
function tasksOf(report: BookReport): Task[] {
  const tasks: Task[] = [];
  for (const work of dutiesOf(report)) {
    const alike = tasks.find(
      ([first]) => sameWork(first, work) && first.duty.severity === work.duty.severity,
    );
    if (alike) alike.push(work);
    else tasks.push([work]);
  }
  return tasks.sort(
    ([x, ...xs], [y, ...ys]) => rank[x.duty.severity] - rank[y.duty.severity] || ys.length - xs.length,
  );
}

function taskTable(tasks: readonly Task[]): string {
  const rows = tasks.map(works => {
    const [{ duty }] = works;
    const names = works.map(({ picture }) => nameOf(picture.path, picture.facts.page));
    const many = names.length > 1 ? `${names.length}: ` : '';
    // of several the reason speaks of one
    const task =
      names.length > 1 ? `Each: ${duty.task}` : `${duty.task[0].toUpperCase()}${duty.task.slice(1)}`;
    return `| **${words(task)}** | ${many}${listed(names, NAMED.task, code)}${storedAs(works)} | ${duty.severity} ${code(duty.rule)}${others(works)} | ${words(duty.reason)} |`;
  });
  return ['| What to do | Pictures | Finding | Why |', '| --- | --- | --- | --- |', ...rows].join('\n');
}

/** What else stands against them: who exports a picture again does it once. */
function others(works: Task): string {
  const told = works.flatMap(({ picture, duty }) =>
    picture.findings.filter(({ severity, rule }) => severity !== 'note' && rule !== duty.rule),
  );
  const rules = [...new Set(told.map(({ rule }) => rule))].sort();
  return rules.length ? `; also ${rules.map(code).join(', ')}` : '';
}

/** Several rows say the same of pictures that are stored in different ways. */
function storedAs(works: Task): string {
  if (works[0].duty.rule !== 'mixed-encodings') return '';
  const encodings = new Set(works.map(({ picture }) => picture.facts.encoding));
  return `, stored as ${list([...encodings].map(code))}`;
}

/** @param as `code` in a table */
function listed(names: readonly string[], most: number, as = codeInText): string {
  // "and 1 more" takes as much room as its name
  const shown = names.length > most + 1 ? names.slice(0, most) : names;
  const more = names.length - shown.length;
  return shown.map(as).join(', ') + (more ? ` and ${more} more` : '');
}

const trouble = ({ message, at }: Trouble) =>
  `${at ? `${codeInText(`${at.file}:${at.line}:${at.column}`)}: ` : ''}${words(message).replace(/\n/g, ' ')}`;

const finding = ({ severity, rule, message }: Finding) =>
  `${severity} ${codeInText(rule)}: ${words(message)}`;

const bullets = (title: string, lines: readonly string[]): string =>
  lines.length ? [`**${title}**`, '', ...lines.map(line => `- ${line}`)].join('\n') : '';

const PLURAL: Record<Severity, string> = { error: 'Errors', warning: 'Warnings', note: 'Notes' };

/**
 * The findings on pictures by rule, folded, and all pictures of those about the book that name only some; what all messages
 * of a rule begin with is said once.
 */
function details(blocks: readonly Block[]): string {
  const inside = blocks.flatMap(block => [...block.book.flatMap(allOf), ...onPictures(block)]);
  if (!inside.length) return '';
  return [
    '<details>',
    '<summary>The findings on pictures</summary>',
    '',
    inside.join('\n\n'),
    '',
    '</details>',
  ].join('\n');
}

function allOf(finding: Finding): string[] {
  const names = unlisted(finding);
  if (!names.length) return [];
  return [
    `**All that ${codeInText(finding.rule)} names for the whole book**: ${count(names.length, 'picture')}. ${listed(names, NAMED.book)}`,
  ];
}

function onPictures({ rule, severity, entries }: Block): string[] {
  if (!entries.length) return [];
  const pictures = new Set(entries.flatMap(entry => entry.pictures)).size;
  const shared = sharedSentences(entries.map(({ message }) => message));
  const lines = entries
    .slice(0, TOLD)
    .map(entry => `- ${listed(entry.pictures, NAMED.finding)}: ${words(entry.message.slice(shared.length))}`);
  const rest = entries.length - TOLD;
  return [
    [
      `**${PLURAL[severity]}, ${codeInText(rule)}**: ${count(pictures, 'picture')}. ${words(shared.trim())}`.trim(),
      '',
      ...lines,
      ...(rest > 0 ? [`- and ${rest} more: see another format`] : []),
    ].join('\n'),
  ];
}
