import type { BookReport } from '../../shared/finding';
import type { Forecast } from '../../shared/forecast';
import type { Space } from '../../shared/picture';
import type { Target } from '../../shared/target';
import { dutyOf } from '../sheet/advice';
import { document, documentParts, Each, SCHEMA } from './document';
import { findingJson } from './finding';
import { forecastJson } from './forecast';
import { canonical } from './number';
import { pictureJson } from './picture';

/**
 * The report of a check as JSON text, by `check-report.schema.json`: no absolute paths, no times, every list in a
 * fixed order, the same to the byte for the same book. A picture is a line, so that two reports can be compared.
 */
export const bookJson = (report: BookReport): string => [...bookJsonParts(report)].join('');

/** The same in parts, for books of any size. */
export function bookJsonParts(report: BookReport): Iterable<string> {
  const { encodings, waived = 0, ...counts } = report.summary;
  return documentParts({
    schema: SCHEMA,
    book: { root: '.', targets: report.targets.map(targetJson) },
    scope: report.scope ? scopeJson(report.scope) : null,
    pictures: new Each(report.pictures, picture => pictureJson(picture, report.findings)),
    findings: [...report.findings, ...(report.waived ?? [])].map(findingJson),
    notices: report.notices,
    summary: { ...counts, waived, attention: attentionOf(report), encodings: canonical(encodings) },
  });
}

const scopeJson = ({ which, unread, beyond = [] }: NonNullable<BookReport['scope']>) => ({
  which,
  unread,
  beyond,
});

/** What is forecast: a picture (`path`, `page`) or stated values. */
export interface Subject {
  path: string | null;
  page: number | null;
  space: Space | null;
  /** Inks in percent; R, G, B or grey 0-255 with 0 = black. */
  values: number[] | null;
  /** A picture in colour: greys alone are forecast. */
  inColour?: boolean;
  /** Null or left out: no settings came into it. */
  settings?: SettingsUsed | null;
}

/** What settings have to do with a forecast. */
export interface SettingsUsed {
  /** As seen from the folder one is in. */
  file: string;
  /**
   * - `used`: it says how the picture is printed
   * - `silent`: it says of no process
   * - `no-target`: it has none for the process that was asked for
   * - `not-asked`: a process was asked for, and these settings were not
   */
  role: 'used' | 'silent' | 'no-target' | 'not-asked';
  /** Those of its targets that are forecast, by name, where it has several. */
  targets: string[];
  /** Options that go before what it says: `--light`. */
  changed: string[];
}

/** What `evengrey forecast` prints, by `forecast-report.schema.json`. */
export function forecastsJson(
  { path, page, space, values, settings = null }: Subject,
  forecasts: readonly Forecast[],
): string {
  return document({
    of: { path, page, space, values },
    settings: settings && {
      file: settings.file,
      role: settings.role,
      targets: settings.targets,
      changed: settings.changed,
    },
    forecasts: forecasts.map(forecastJson),
  });
}

/** Pictures that something is to be done with before the order: the same that the text counts. */
const attentionOf = ({ pictures, findings }: BookReport): number =>
  pictures.filter(picture => dutyOf(picture, findings)).length;

/** A target as reports give it. */
export const targetJson = (target: Target) => ({
  name: target.name,
  process: target.process,
  paper: typeof target.paper === 'string' ? target.paper : canonical(target.paper),
  light: target.light,
  route: target.route,
  encodings: target.encodings,
  inkLimit: target.inkLimit,
  profile: target.profile,
  record: target.record,
});
