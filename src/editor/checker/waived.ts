import { parseAgainst } from '../../book/settings/validate';
import { changesAdding, type TextChange, waiversFor } from '../../book/waivers/add';
import { applyWaivers } from '../../book/waivers/apply';
import { WAIVERS_FILE, type WaiversRead } from '../../book/waivers/file';
import { waiverNotices } from '../../book/waivers/notices';
import type { BookReport } from '../../shared/finding';

/** What waivers made of a report. */
export interface Waived {
  /** With what is waived apart. */
  report: BookReport;
  /** What a person should know of it, once. */
  notices: string[];
}

/** A report of the whole book as its waivers leave it; where their file cannot be used nothing is waived. */
export function withWaivers(report: BookReport, { waivers, file }: WaiversRead): Waived {
  if (file === null) return { report, notices: [] };
  const { report: waived, unused } = applyWaivers(report, waivers);
  const notices = waiverNotices(waived, { file, waivers, stale: unused, show: 'count' });
  return { report: { ...waived, notices: [...waived.notices, ...notices] }, notices };
}

/**
 * What waives the findings of a rule on a picture in the file of waivers, as the editor has its `text`; null: none is
 * there.
 * @throws Error in words for people where it cannot be done
 */
export function waiving(
  rule: string,
  picture: string,
  reason: string,
  report: BookReport,
  text: string | null,
): TextChange[] {
  const problems = text === null ? [] : parseAgainst('waivers', text, WAIVERS_FILE).problems;
  if (problems.length)
    throw new Error(
      `Nothing was waived: ${WAIVERS_FILE} has a problem on line ${problems[0].line}. Put it right first. ${problems[0].message}`,
    );
  return changesAdding(text, waiversFor(rule, picture, reason, report));
}
