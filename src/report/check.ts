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
import type { Style } from './text/style';

/** What a format may need beside the report. */
export interface Circumstances {
  place: Place;
  /** The severities that fail this check. */
  failing: ReadonlySet<Severity>;
  style: Style;
  /** The pictures, for a page: one entry each. */
  shown: readonly Shown[];
}

/** What writes the report of a check, by format. */
export const writers: Record<
  CheckFormat,
  (report: BookReport, circumstances: Circumstances) => string | Iterable<string>
> = {
  text: (report, { style }) => bookText(report, style),
  json: report => bookJsonParts(report),
  sarif: (report, { place }) => bookSarif(report, place),
  junit: (report, { place, failing }) => bookJunit(report, place, failing),
  markdown: report => bookMarkdown(report),
  html: (report, { place, shown }) => bookPage(titleOf(place), report, shown),
  github: (report, { place }) => bookCommands(report, place),
};

/** The book's folder in its repository; what the folder is called on this machine is nobody's business. */
const titleOf = ({ folder }: Place) => folder.replace(/\/$/, '') || 'The book';
