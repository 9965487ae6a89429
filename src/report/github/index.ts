import type { BookReport, Finding, WaivedFinding } from '../../shared/finding';
import { askedBy, askedWords } from '../asked';
import { closing } from '../counts';
import type { Place } from '../place';
import { verdict } from '../text/begin';
import { safe } from '../text/style';
import { everyFinding, everyWaived } from '../told';
import type { Done, Trouble } from '../trouble';
import { annotation, remark } from './annotation';
import { command } from './command';

/** So many of each severity and step are shown beside the files; the log has all. */
const SHOWN = 10;

/**
 * The report of a check as workflow commands: one annotation a finding, worst first, since only the first of each
 * severity are shown, then the verdict and a count.
 */
export function bookCommands(
  report: BookReport,
  place: Place,
  {
    troubles = [],
    done = 'checked',
    showWaived = false,
  }: { troubles?: readonly Trouble[]; done?: Done; showWaived?: boolean } = {},
): string {
  const { summary } = report;
  const waived = showWaived ? everyWaived(report) : [];
  const nothing = troubles.length > 0 && !report.pictures.length;
  const crowded = Math.max(summary.errors, summary.warnings, summary.notes + waived.length) > SHOWN;
  const lines = [
    ...troubles.map(({ message, at }) =>
      command('error', { file: at?.file ?? null, line: at?.line ?? null, title: 'Evengrey' }, safe(message)),
    ),
    ...everyFinding(report).map(({ finding, picture }) =>
      annotation(picture ? finding : withAsked(finding, report), picture, place),
    ),
    ...waived.map(({ finding, picture }) => annotation(asWaived(finding), picture, place)),
    ...report.notices.map(remark),
    // no names from here on: the runner looks for older commands anywhere in a line
    ...(nothing ? [`Nothing was ${done}.`] : [verdict(report), closing(summary)]),
    ...(crowded
      ? [`GitHub shows the first ${SHOWN} of a severity beside the files; this log has all of them.`]
      : []),
  ];
  return `${lines.join('\n')}\n`;
}

/** It fails nothing, so it is a notice, whatever it was. */
const asWaived = ({ rule, severity, message, data, reason }: WaivedFinding): Finding => ({
  ...{ rule, data, severity: 'note' },
  message: `Waived ${severity}${reason && ` (${reason})`}: ${message}`,
});

/** Beside the settings nobody sees the pictures that it is about. */
const withAsked = (finding: Finding, { pictures }: BookReport): Finding => ({
  ...finding,
  message: finding.message + askedWords(finding, askedBy(finding, pictures)),
});
