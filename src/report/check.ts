// no-unit-test: a table of what has tests of its own; test/cli/actions/formats.test.ts has the built program write each
import type { BookReport, Severity } from '../shared/finding';
import type { CheckFormat } from './formats';
import { bookCommands } from './github';
import { bookJsonParts } from './json';
import { bookJunit } from './junit';
import { bookMarkdown } from './markdown';
import { bookPage, type Shown } from './page/book-page';
import type { Place } from './place';
import { bookSarif } from './sarif';
import { bookText } from './text/book';
import { type Style, safe } from './text/style';
import type { Done, Trouble } from './trouble';

/** What a format may need beside the report. */
export interface Circumstances {
  place: Place;
  /** The severities that fail this check. */
  failing: ReadonlySet<Severity>;
  style: Style;
  /** The pictures, for a page: one entry each. */
  shown: readonly Shown[];
  /** Why not all that was asked for was checked; with no picture in the report, why nothing was. */
  troubles?: readonly Trouble[];
  /** What was not done then. */
  done?: Done;
  /** Waived findings are wanted too, where a format does not tell them anyway. */
  showWaived?: boolean;
}

/** What writes the report of a check, by format. */
export const writers: Record<
  CheckFormat,
  (report: BookReport, circumstances: Circumstances) => string | Iterable<string>
> = {
  text: (report, { style, troubles = [], done }) =>
    troubles.length && !report.pictures.length ? nothingText(troubles, done) : bookText(report, style),
  json: report => bookJsonParts(report),
  sarif: (report, { place, troubles }) => bookSarif(report, place, troubles),
  junit: (report, { place, failing, troubles }) => bookJunit(report, place, failing, troubles),
  markdown: (report, { place, troubles, done }) => bookMarkdown(report, troubles, done, bookIn(place)),
  html: (report, { place, shown }) => bookPage(titleOf(place), report, shown),
  github: (report, { place, troubles, done, showWaived }) =>
    bookCommands(report, place, { troubles, done, showWaived }),
};

const nothingText = (troubles: readonly Trouble[], done: Done = 'checked') =>
  [`Nothing was ${done}.`, ...troubles.map(({ message }) => safe(message)), ''].join('\n');

/** The book's folder in its repository; what the folder is called on this machine is nobody's business. */
const bookIn = ({ folder }: Place) => folder.replace(/\/$/, '');

const titleOf = (place: Place) =>
  bookIn(place) ? `${bookIn(place)}: how its pictures may print` : 'How the pictures of this book may print';
