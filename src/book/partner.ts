// no-unit-test: test/book/waivers/key.test.ts and test/book/comparison/compare-pairs.test.ts know pairs by it
import type { Finding } from '../shared/finding';

/** The key under which a finding on a picture names the other one that it is about; undefined: it is about no pair. */
export const partnerKey = ({ data }: Pick<Finding, 'data'>) =>
  (['beside', 'same'] as const).find(key => typeof data[key] === 'string');

/** The other picture of a pair; null where a finding is about none. */
export function partnerOf(finding: Pick<Finding, 'data'>): string | null {
  const key = partnerKey(finding);
  return key ? (finding.data[key] as string) : null;
}
