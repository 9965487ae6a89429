import { defaultTarget, forecastPicture } from '../../../src/print';
import type { BookReport, Finding, PictureReport, Severity } from '../../../src/shared/finding';
import type { PictureFacts } from '../../../src/shared/picture';
import { greyFacts } from '../../book/support/facts';

export const target = defaultTarget('offset-coated');

export const finding = (rule: string, severity: Severity, message: string): Finding => ({
  rule,
  severity,
  message,
  data: {},
});

export function picture(
  path: string,
  findings: Finding[] = [],
  facts: Partial<PictureFacts> = {},
): PictureReport {
  const read = greyFacts('0'.repeat(64), facts);
  const forecast = forecastPicture(read, target);
  return {
    path,
    facts: read,
    intent: 'grey',
    intentStated: false,
    part: null,
    targets: [target],
    forecasts: forecast ? [forecast] : [],
    placed: null,
    findings,
  };
}

/** A report of these pictures, counted. */
export function report(pictures: PictureReport[], more: Partial<BookReport> = {}): BookReport {
  const findings = more.findings ?? [];
  const all = [...findings, ...pictures.flatMap(p => p.findings)];
  const count = (severity: Severity) => all.filter(f => f.severity === severity).length;
  const encodings: BookReport['summary']['encodings'] = {};
  for (const { facts } of pictures) encodings[facts.encoding] = (encodings[facts.encoding] ?? 0) + 1;
  return {
    targets: [target],
    pictures,
    findings,
    notices: [],
    summary: {
      pictures: pictures.length,
      errors: count('error'),
      warnings: count('warning'),
      notes: count('note'),
      encodings,
    },
    ...more,
  };
}
