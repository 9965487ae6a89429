import { createHash } from 'node:crypto';
import type { Told } from '../told';

/** Changes when the way of counting below does, so that old and new ones are not compared. */
export const FINGERPRINT = 'evengrey/finding/v1';

/**
 * One fingerprint (hexadecimal) a finding, by which the same finding is known again in the next run: its rule, its
 * picture's path in the book and page, the target, and which it is of several alike. Not its message, which counts other
 * pictures; not its severity, which settings change; not the picture's content, which changes while the fault stays.
 */
export function fingerprintsOf(told: readonly Told[]): string[] {
  const keys = told.map(keyOf);
  // by their words: which of them is waived, and so told later, must not matter
  const byWords = told
    .map((_, i) => i)
    .sort((i, j) => inOrder(told[i].finding.message, told[j].finding.message));
  const seen = new Map<string, number>();
  const prints: string[] = [];
  for (const i of byWords) {
    const nth = seen.get(keys[i]) ?? 0;
    seen.set(keys[i], nth + 1);
    prints[i] = createHash('sha256').update(`${keys[i]} ${nth}`).digest('hex');
  }
  return prints;
}

function keyOf({ finding: { rule, data }, picture }: Told): string {
  const target = typeof data.target === 'string' ? data.target : null;
  return JSON.stringify([rule, picture?.path ?? null, picture?.facts.page ?? null, target]);
}

/** By code point, not by locale: two machines must count alike. */
const inOrder = (x: string, y: string) => (x < y ? -1 : x > y ? 1 : 0);
