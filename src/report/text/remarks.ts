// no-unit-test: test/report/text/book.test.ts and test/report/markdown/index.test.ts read these lines
import { doubtNotices } from '../../book/doubts';
import type { BookReport, PictureReport } from '../../shared/finding';
import { nameOf } from './blocks';

/** So many pictures are named. */
const NAMED = 12;

/** What was not judged, judged as something else, or not looked at: lines, by kind. */
export function remarksOf(report: BookReport): string[][] {
  const judged = report.pictures.filter(({ replacedBy }) => !replacedBy);
  const colour = judged.filter(({ facts, intentStated }) => facts.encoding === 'colour' && !intentStated);
  // not seen in the files themselves, so it is said what was judged
  const seenThrough = judged.filter(({ facts }) => facts.remarks.some(({ code }) => code === 'transparent'));
  return [
    named(
      'In colour, and not judged, since nobody said what it is meant to be ("intent" in evengrey.json)',
      colour,
    ),
    named(
      'With transparency, judged as laid on paper white; what is wholly transparent counts as no picture',
      seenThrough,
    ),
    apart(report),
  ];
}

function named(what: string, pictures: readonly PictureReport[]): string[] {
  if (!pictures.length) return [];
  const names = pictures.slice(0, NAMED).map(({ path, facts }) => nameOf(path, facts.page));
  const more = pictures.length > NAMED ? ` and ${pictures.length - NAMED} more` : '';
  return [`${what}: ${names.join(', ')}${more}`];
}

/** Notices that do not stand in the head already. */
function apart({ targets, notices }: BookReport): string[] {
  const told = new Set(targets.flatMap(doubtNotices));
  return notices.filter(notice => !told.has(notice));
}
