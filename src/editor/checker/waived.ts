import { applyWaivers } from '../../book/waivers/apply';
import type { WaiversRead } from '../../book/waivers/file';
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
