import { kindOf } from '../../rules/recommended';
import { count, list } from '../../rules/words';
import type { BookReport, PictureReport } from '../../shared/finding';
import { isPassedOver } from '../passed-over';
import { type Duty, dutyOf } from '../sheet/advice';
import { rank } from '../told';
import { nameOf, patternOf } from './blocks';

/** Whether this book can be ordered as it is, in one sentence; and how much else lies there. */
export function verdict(report: BookReport): string {
  const { unplaced = 0 } = report;
  const [pictures, are, were] = unplaced === 1 ? ['picture', 'is', 'was'] : ['pictures', 'are', 'were'];
  const others = unplaced
    ? ` ${unplaced} other ${pictures} here ${are} placed by no layout, and ${were} not checked.`
    : '';
  return `${onThese(report)}${passedOverWords(report)}${beyondWords(report.scope)}${others}`;
}

/** Of submodules that are another commit since. */
export const beyondWords = (scope: BookReport['scope']): string =>
  scope?.beyond?.length
    ? ` What changed in ${list(scope.beyond)} was not looked at: a submodule belongs to another repository. "evengrey check" of the folder judges its pictures.`
    : '';

function passedOverWords({ pictures }: BookReport): string {
  const many = pictures.filter(isPassedOver).length;
  return many ? ` ${count(many, 'picture')} could not be read, and the settings have that passed over.` : '';
}

function onThese(report: BookReport): string {
  const all = report.summary.pictures;
  const read = all - report.pictures.filter(isPassedOver).length;
  const urgent = dutiesOf(report).length;
  if (all === 0) return nothingJudged(report);
  if (read === 0) return 'Nothing was judged.';
  if (urgent > 0)
    return `${urgent} of ${all} ${all === 1 ? 'picture wants' : `pictures ${urgent === 1 ? 'wants' : 'want'}`} attention before this book is ordered.`;
  if (report.findings.some(finding => finding.severity !== 'note'))
    return all === 1
      ? 'The one picture wants no attention by itself, but the book as a whole does.'
      : `No single one of ${all} pictures wants attention, but the book as a whole does.`;
  const { waived = 0 } = report.summary;
  const only =
    waived && `Only ${count(waived, 'waived finding')} ${waived === 1 ? 'stands' : 'stand'} against printing`;
  if (report.scope?.unread) {
    const these = read === 1 ? 'this file' : `these ${read} files`;
    return `${only ? `${only} ${these}` : `Nothing in ${these} stands against printing`}, each looked at by itself; ${count(report.scope.unread, 'other picture')} of the book ${report.scope.unread === 1 ? 'was' : 'were'} not compared.`;
  }
  return `${only || 'Nothing in the files stands against printing'} ${all === 1 ? 'the one picture' : read < all ? `the ${count(read, 'picture')} that could be read` : `all ${all} pictures`}.`;
}

function nothingJudged({ scope }: BookReport): string {
  if (!scope) return 'No pictures were found here.';
  const gone = scope.gone?.length ?? 0;
  return gone
    ? `Nothing was judged: ${count(gone, 'picture')} ${gone === 1 ? 'is' : 'are'} taken out of the book, and no other is ${scope.which}.`
    : `No picture of this book is ${scope.which}.`;
}

/** What to do first, or null: with the worst picture, and how many want the same for the same reason. */
export function begin(report: BookReport): string | null {
  if (!report.pictures.length) return null;
  const duties = dutiesOf(report);
  if (duties.length === 0)
    return report.findings.some(f => f.severity !== 'note') ? null : beforeTheRun(report);
  const least = Math.min(...duties.map(({ duty }) => rank[duty.severity]));
  const first = duties.find(({ duty }) => rank[duty.severity] === least)!;
  const { picture, duty } = first;
  const alike = duties.filter(other => other !== first && sameWork(other, first)).length;
  const more = alike > 0 ? ` The same goes for ${alike} more.` : '';
  return `Begin with ${nameOf(picture.path, picture.facts.page)}: ${duty.task}. ${duty.reason}${more}`;
}

/** With nothing to be done about the files. */
const beforeTheRun = ({ findings }: BookReport): string =>
  findings.some(({ data }) => data.ask !== undefined)
    ? 'Ask the print house what it does with such files (see likely-tint below), and have a test print made first.'
    : 'Have a test print made first.';

/** A picture and what has to be done with it. */
export interface Work {
  picture: PictureReport;
  duty: Duty;
}

/** Everything that has to be done, by picture. */
export const dutiesOf = ({ pictures, findings }: BookReport): Work[] =>
  pictures.flatMap(picture => {
    const duty = dutyOf(picture, findings);
    return duty ? [{ picture, duty }] : [];
  });

/**
 * A file that is cut short and one of a format that nobody reads are both unreadable, and different work; so are one of
 * R = G = B and a toned one among others that are neither.
 */
export const sameWork = (x: Work, y: Work): boolean =>
  x.duty.rule === y.duty.rule &&
  patternOf(x.duty.reason) === patternOf(y.duty.reason) &&
  (x.duty.rule !== 'mixed-encodings' || kindOf(x.picture) === kindOf(y.picture));
