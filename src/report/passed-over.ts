// no-unit-test: test/report/text/begin.test.ts and test/report/junit/index.test.ts tell books with such pictures
import type { PictureReport } from '../shared/finding';

/** Where the settings switch off that a picture cannot be read, nothing is said against it, and nothing speaks for it either. */
export const isPassedOver = ({ facts, findings, replacedBy }: PictureReport): boolean =>
  facts.unreadable !== null && !findings.length && !replacedBy;
