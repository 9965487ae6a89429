import type { Comparison } from '../../shared/comparison';
import type { Finding, Severity } from '../../shared/finding';
import { command } from '../github/command';
import type { Place } from '../place';
import { nameOf } from '../text/blocks';
import { safe } from '../text/style';
import { rank } from '../told';
import { settingsLines } from './settings';
import { closing, headline } from './words';

const commands: Record<Severity, string> = { error: 'error', warning: 'warning', note: 'notice' };

/**
 * What two revisions' comparison finds new as workflow commands: one annotation a finding, worst first, on the picture as it
 * is called now; what is said of several pictures, or of the book, once, on the settings. What was there before is none.
 */
export function comparisonCommands(comparison: Comparison, place: Place): string {
  const { head, changes, others, book, notices } = comparison;
  const together = new Set(head.findings);
  const ofPictures = [
    ...changes.flatMap(({ path, pages }) => pages.map(({ page, findings }) => ({ path, page, findings }))),
    ...others,
  ].flatMap(({ path, page, findings }) =>
    findings.new.map(finding => ({ finding, path: place.folder + path, name: nameOf(path, page) })),
  );
  const shared = new Set([
    ...ofPictures.map(({ finding }) => finding).filter(f => together.has(f)),
    ...book.new,
  ]);
  const told = [
    ...[...shared].map(finding => ({ finding, path: place.settings, name: '' })),
    ...ofPictures.filter(({ finding }) => !shared.has(finding)),
  ].sort((x, y) => rank[x.finding.severity] - rank[y.finding.severity]);
  const remarks = [...settingsLines(comparison), ...notices];
  const lines = [
    ...told.map(annotation),
    ...remarks.map(words => command('notice', { title: 'Evengrey' }, safe(words))),
    // no names from here on: the runner looks for older commands anywhere in a line
    headline(comparison),
    closing(comparison),
  ];
  return `${lines.join('\n')}\n`;
}

function annotation({
  finding,
  path,
  name,
}: {
  finding: Finding;
  path: string | null;
  name: string;
}): string {
  const { rule, severity, message } = finding;
  const where = { file: path, line: path === null ? null : 1, title: rule };
  return command(commands[severity], where, `${name && `${safe(name)}: `}${safe(message)}`);
}
