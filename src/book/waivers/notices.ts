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
          `${file} has ${count(stale.length, 'waiver')} of no finding any more: ${list(stale.map(named), NAMED)}. The picture was exported again, or what is said of it has changed.${show === 'count' ? '' : ' "evengrey check --waive" takes them out.'}`,
        ]
      : []),
    ...(silent.length
      ? [`${file} gives no reason for ${count(silent.length, 'waiver')}: ${list(silent.map(named), NAMED)}.`]
      : []),
  ];
}

/** How the sentence ends. */
const HOW: Record<string, string> = { true: ':', false: '; --show-waived tells them.', count: '.' };

const line = ({ finding, name }: { finding: WaivedFinding; name: string }): string =>
  `Waived on ${name}, ${finding.severity} ${finding.rule}${finding.reason ? ` (${finding.reason})` : ''}: ${finding.message}`;

const named = ({ rule, picture }: Waiver): string => (picture ? `${rule} on ${picture}` : rule);
