import type { BookReport, Severity } from '../../shared/finding';
import { askedBy, askedWords } from '../asked';
import { closing } from '../counts';
import type { Place } from '../place';
import { verdict } from '../text/begin';
import { nameOf } from '../text/blocks';
import { safe } from '../text/style';
import { everyFinding, type Told } from '../told';
import type { Trouble } from '../trouble';
import { command } from './command';

/** So many of each severity and step are shown beside the files; the log has all. */
const SHOWN = 10;

const commands: Record<Severity, string> = { error: 'error', warning: 'warning', note: 'notice' };

/**
 * The report of a check as workflow commands: one annotation a finding, worst first, since only the first of each
 * severity are shown, then the verdict and a count. A log shows a command's words alone, so they begin with the name.
 */
export function bookCommands(report: BookReport, place: Place, troubles: readonly Trouble[] = []): string {
  const { summary } = report;
  const nothing = troubles.length > 0 && !report.pictures.length;
  const crowded = Math.max(summary.errors, summary.warnings, summary.notes) > SHOWN;
  const lines = [
    ...troubles.map(({ message, at }) =>
      command('error', { file: at?.file ?? null, line: at?.line ?? null, title: 'Evengrey' }, safe(message)),
    ),
    ...everyFinding(report).map(told => annotation(told, report, place)),
    ...report.notices.map(notice => command('notice', { title: 'Evengrey' }, safe(notice))),
    // no names from here on: the runner looks for older commands anywhere in a line
    ...(nothing ? ['Nothing was checked.'] : [verdict(report), closing(summary)]),
    ...(crowded
      ? [`GitHub shows the first ${SHOWN} of a severity beside the files; this log has all of them.`]
      : []),
  ];
  return `${lines.join('\n')}\n`;
}

function annotation({ finding, picture }: Told, { pictures }: BookReport, place: Place): string {
  const { rule, severity, message } = finding;
  const file = picture ? place.folder + picture.path : place.settings;
  const name = picture ? `${safe(nameOf(picture.path, picture.facts.page))}: ` : '';
  return command(
    commands[severity],
    { file, line: file === null ? null : 1, title: rule },
    name + safe(message + (picture ? '' : askedWords(askedBy(finding, pictures)))),
  );
}
