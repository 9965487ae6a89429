// no-unit-test: a table of what has tests of its own; test/cli/actions/formats.test.ts has the built program write each
import type { BookReport, Severity } from '../shared/finding';
import type { CheckFormat } from './formats';
import { bookCommands } from './github';
import { bookJsonParts } from './json';
import { bookJunit } from './junit';
import { bookMarkdown } from './markdown';
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
  github: (report, { place }) => bookCommands(report, place),
};
