import { count } from '../../rules/words';
import type { BookReport, Finding, WaivedFinding } from '../../shared/finding';
import { askedBy, askedWords } from '../asked';
import { closing } from '../counts';
import type { Place } from '../place';
import { slipsApart } from '../slips';
import { verdict } from '../text/begin';
import { everyFinding, everyWaived } from '../told';
import type { Done, Trouble } from '../trouble';
import { annotation, onLine, remark } from './annotation';

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
  const { slips, notices } = slipsApart(report, place);
  const warnings = summary.warnings + slips.length;
  const crowded = Math.max(summary.errors, warnings, summary.notes + waived.length) > SHOWN;
  const lines = [
    ...troubles.map(({ message, at }) => onLine('error', message, at)),
    ...everyFinding(report).map(({ finding, picture }) =>
      annotation(picture ? finding : withAsked(finding, report), picture, place),
    ),
    ...waived.map(({ finding, picture }) => annotation(asWaived(finding), picture, place)),
    ...slips.map(({ slip, at }) => onLine('warning', slip.message, at)),
    ...notices.map(remark),
    // no names from here on: the runner looks for older commands anywhere in a line
    ...(nothing ? [`Nothing was ${done}.`] : [verdict(report), closing(summary) + besides(slips.length)]),
    ...(crowded
      ? [`GitHub shows the first ${SHOWN} of a severity beside the files; this log has all of them.`]
      : []),
  ];
  return `${lines.join('\n')}\n`;
}

/** They count as warnings do, and are none of a picture. */
const besides = (slips: number): string =>
  slips
    ? ` Besides, ${count(slips, 'line')} of the settings ${slips === 1 ? 'says' : 'say'} something in vain, and ${slips === 1 ? 'counts' : 'count'} as a warning does.`
    : '';

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
