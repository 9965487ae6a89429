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
  const seen = new Map<string, number>();
  return told.map(({ finding: { rule, data }, picture }) => {
    const target = typeof data.target === 'string' ? data.target : null;
    const what = JSON.stringify([rule, picture?.path ?? null, picture?.facts.page ?? null, target]);
    const nth = seen.get(what) ?? 0;
    seen.set(what, nth + 1);
    return createHash('sha256').update(`${what} ${nth}`).digest('hex');
  });
}
