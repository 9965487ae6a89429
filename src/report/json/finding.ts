// no-unit-test: its names and its order are what test/report/json/index.test.ts reads
import type { Finding, WaivedFinding } from '../../shared/finding';
import { canonical } from './number';

export const findingJson = (finding: Finding | WaivedFinding) => ({
  rule: finding.rule,
  severity: finding.severity,
  message: finding.message,
  data: canonical(finding.data),
  waived: 'reason' in finding ? { reason: finding.reason } : null,
});
