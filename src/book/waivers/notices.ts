import { count, list } from '../../rules/words';
import type { BookReport, WaivedFinding } from '../../shared/finding';
import type { Waiver } from './key';

const NAMED = 5;

/**
 * What a person should know of waivers: how many findings are waived, which waivers are of none any more (`stale`), which
 * have no reason; with `show` the waived findings themselves. `count`: they are told elsewhere, or where nobody can type
 * an option.
 */
export function waiverNotices(
  report: BookReport,
  {
    file,
    waivers,
    stale,
    show,
  }: { file: string; waivers: readonly Waiver[]; stale: readonly Waiver[]; show: boolean | 'count' },
): string[] {
  const waived = [
    ...(report.waived ?? []).map(finding => ({ finding, name: 'the book' })),
    ...report.pictures.flatMap(({ path, facts, waived = [] }) =>
      waived.map(finding => ({ finding, name: facts.page > 1 ? `${path} (page ${facts.page})` : path })),
    ),
  ];
  const silent = waivers.filter(({ reason }) => !reason?.trim());
  return [
    ...(waived.length
      ? [
          `${count(waived.length, 'finding')} ${waived.length === 1 ? 'is' : 'are'} waived by ${file} and ${waived.length === 1 ? 'does' : 'do'} not count${HOW[String(show)]}`,
        ]
      : []),
    ...(show === true ? waived.map(line) : []),
    ...(stale.length
      ? [
          `${staleWords(file, stale, report)}${show === 'count' ? '' : ' "evengrey check --waive" takes them out.'}`,
        ]
      : []),
    ...(silent.length
      ? [`${file} gives no reason for ${count(silent.length, 'waiver')}: ${list(silent.map(named), NAMED)}.`]
      : []),
  ];
}

/** Which waivers are of no finding, and why each is of none, as one sentence. */
export function staleWords(
  file: string,
  stale: readonly Waiver[],
  { pictures }: Pick<BookReport, 'pictures'>,
): string {
  const told = stale.map(waiver => `${named(waiver)} (${whyStale(waiver, pictures)})`);
  return `${file} has ${count(stale.length, 'waiver')} of no finding: ${list(told, NAMED)}.`;
}

function whyStale({ picture, content }: Waiver, pictures: BookReport['pictures']): string {
  const there = new Set(pictures.map(({ facts }) => facts.sha256));
  if (content.every(sha256 => there.has(sha256))) return 'what is said has changed';
  if (picture == null || content.length > 1)
    return 'of its pictures some were exported again or taken out of the book';
  const [now] = pictures.filter(({ path }) => path === picture);
  if (!now || now.facts.unreadable?.reason === 'missing') return 'not in the book any more';
  return now.facts.unreadable ? 'cannot be read now' : 'exported again';
}

/** How the sentence ends. */
const HOW: Record<string, string> = { true: ':', false: '; --show-waived tells them.', count: '.' };

const line = ({ finding, name }: { finding: WaivedFinding; name: string }): string =>
  `Waived on ${name}, ${finding.severity} ${finding.rule}${finding.reason ? ` (${finding.reason})` : ''}: ${finding.message}`;

const named = ({ rule, picture, other }: Waiver): string =>
  picture ? `${rule} on ${[picture, ...(other === undefined ? [] : [other])].join(' and ')}` : rule;
