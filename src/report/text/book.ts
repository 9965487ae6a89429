import { doubtNotices, doubtsOf } from '../../book/doubts';
import { lights, papers, processes, signalOf } from '../../print';
import { ground } from '../../rules/targets';
import { percent } from '../../rules/words';
import type { BookReport, PictureReport, Severity } from '../../shared/finding';
import type { Encoding } from '../../shared/picture';
import type { RouteId, Target } from '../../shared/target';
import { encodings } from '../sheet/encoding';
import { begin, verdict } from './begin';
import { type Block, blocksOf, nameOf, sharedSentences } from './blocks';
import { type Paint, paintOf, type Style, safe } from './style';
import { columns, indent, wrap } from './wrap';

/** So many findings of a rule are told in full; of the rest only the names. Notes are told more shortly. */
const IN_FULL: Record<Severity, number> = { error: 8, warning: 8, note: 2 };
/** So many coloured pictures are named. */
const NAMED = 12;

/** The report of a check for people: what to do first, findings by rule, worst first, how the pictures store their grey. */
export function bookText(report: BookReport, style: Style): string {
  const paint = paintOf(style);
  const first = begin(report);
  const sections = [
    [
      ...wrap(verdict(report), style.width).map(paint.bold),
      ...report.targets.flatMap(target => wrap(targetLine(target, report), style.width, 2)),
      ...(report.targets.length ? [] : wrap(NO_TARGET, style.width)),
    ],
    first ? wrap(safe(first), style.width) : [],
    ...blocksOf(report).map(block => blockLines(block, style, paint)),
    encodingLines(report, paint),
    colourLines(report, style),
    transparentLines(report, style),
    apart(report).flatMap(notice => wrap(safe(notice), style.width, 2)),
    [closing(report, paint)],
  ];
  return `${sections
    .filter(lines => lines.length > 0)
    .map(lines => lines.join('\n'))
    .join('\n\n')}\n`;
}

const NO_TARGET = `Nobody said where it will be printed, so no tint is forecast. Name a process (${processes
  .map(({ id }) => id)
  .join(', ')}): "process" in evengrey.json, or --process.`;

function targetLine(target: Target, { targets, pictures }: BookReport): string {
  const nameIn = (list: readonly { id: string; name: string }[], id: string) =>
    list.find(entry => entry.id === id)?.name ?? id;
  const paper =
    typeof target.paper === 'string' ? nameIn(papers, target.paper) : 'a paper of your own, as measured';
  const name = targets.length > 1 ? `${safe(target.name)}: ` : '';
  const profile = target.pressProfile ? `; profile "${safe(target.pressProfile.description)}"` : '';
  const doubts = doubtsOf(target)
    .map(doubt => ` ${doubt[0].toUpperCase()}${doubt.slice(1)}.`)
    .join('');
  return `${name}${nameIn(processes, target.process)}; ${paper}; ${nameIn(lights, target.light)}; ${routeWords(target)}${profile}.${doubts}${basis(target, pictures)}`;
}

/** What the forecasts take the print house to do with the numbers; of a route that cannot be, `doubtsOf` tells. */
function routeWords(target: Target): string {
  if (signalOf(target) === 'rgb') return routes.rgb;
  return target.route === 'rgb' ? routes.separated : routes[target.route];
}

const routes: Record<RouteId, string> = {
  rgb: 'printed from R, G, B',
  separated: 'separated to inks',
  inks: 'ink values kept where a file holds them',
  'black-plate': 'black plate only',
  unknown: 'route not known, so several are mixed by our own guess of their shares',
};

/** Notices that do not stand in the head already. */
function apart({ targets, notices }: BookReport): string[] {
  const told = new Set(targets.flatMap(doubtNotices));
  return notices.filter(notice => !told.has(notice));
}

/** What the forecasts rest on, once for all findings. */
function basis({ name }: Target, pictures: readonly PictureReport[]): string {
  const grounds = new Set(
    pictures.flatMap(({ targets, forecasts }) =>
      forecasts.filter((_, i) => targets[i].name === name).map(ground),
    ),
  );
  return grounds.size ? ` Forecasts: ${[...grounds].join('; or ')}.` : '';
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

/** Coloured pictures of which nobody said what they are meant to be. */
function colourLines({ pictures }: BookReport, style: Style): string[] {
  const colour = pictures.filter(({ facts, intentStated }) => facts.encoding === 'colour' && !intentStated);
  if (!colour.length) return [];
  const names = colour.slice(0, NAMED).map(({ path, facts }) => safe(nameOf(path, facts.page)));
  const more = colour.length > NAMED ? ` and ${colour.length - NAMED} more` : '';
  return wrap(
    `In colour, and not judged, since nobody said what it is meant to be ("intent" in evengrey.json): ${names.join(', ')}${more}`,
    style.width,
    2,
  );
}

/** Not seen in the files themselves, so it is said what was judged. */
function transparentLines({ pictures }: BookReport, style: Style): string[] {
  const seen = pictures.filter(({ facts }) => facts.remarks.some(({ code }) => code === 'transparent'));
  if (!seen.length) return [];
  const names = seen.slice(0, NAMED).map(({ path, facts }) => safe(nameOf(path, facts.page)));
  const more = seen.length > NAMED ? ` and ${seen.length - NAMED} more` : '';
  return wrap(
    `With transparency, judged as laid on paper white; what is wholly transparent counts as no picture: ${names.join(', ')}${more}`,
    style.width,
    2,
  );
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
