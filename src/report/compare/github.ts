import { WAIVERS_FILE } from '../../book/waivers/file';
import type { Comparison } from '../../shared/comparison';
import { CAUTION } from '../caution';
import { annotation, onLine, remark } from '../github/annotation';
import { command } from '../github/command';
import type { Place } from '../place';
import { slipsApart } from '../slips';
import { safe } from '../text/style';
import { everyFinding } from '../told';
import { adviceLines } from './advice';
import { conditions, forecasts, remarks } from './conditions';
import { byNumber, headline } from './headline';
import { newsOf } from './news';
import { settingsLines } from './settings';
import { waivedLines, waivedWords } from './waived';
import { closing } from './words';

/**
 * What two revisions' comparison finds new as workflow commands: one annotation a finding, worst first, on the picture as it
 * is called now, or on the line that places one that is not there; what is said of several pictures, or of the book, once, on the settings. What these say in vain
 * since stands on its line. What was there before is none, and what the change waives is one notice.
 */
export function comparisonCommands(comparison: Comparison, place: Place): string {
  const told = everyFinding(newsOf(comparison, 'new'));
  const { slips, notices } = slipsApart(comparison, place);
  const lines = [
    ...told.map(({ finding, picture }) => annotation(finding, picture, place)),
    ...waivers(comparison, place),
    ...slips.map(({ slip, at }) => onLine('warning', slip.message, at)),
    ...[
      ...settingsLines(comparison),
      ...adviceLines(comparison),
      ...remarks({ ...comparison, notices }),
      ...conditions(comparison),
    ].map(remark),
    // no names from here on: the runner looks for older commands anywhere in a line
    headline(comparison, byNumber),
    closing(comparison),
    ...(forecasts(comparison) ? [CAUTION] : []),
  ];
  return `${lines.join('\n')}\n`;
}

/** What the change itself waives is no finding any more, and a reviewer's to judge. */
function waivers(comparison: Comparison, { folder }: Place): string[] {
  const words = waivedWords(comparison);
  if (!words) return [];
  const said = [words, ...waivedLines(comparison)].map(safe).join('\n');
  return [command('notice', { file: folder + WAIVERS_FILE, line: 1, title: 'Evengrey' }, said)];
}
