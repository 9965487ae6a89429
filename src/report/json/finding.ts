// no-unit-test: its names and its order are what test/report/json/index.test.ts reads
import type { Finding } from '../../shared/finding';
import { canonical } from './number';

export const findingJson = ({ rule, severity, message, data }: Finding) => ({
  rule,
  severity,
  message,
  data: canonical(data),
});
