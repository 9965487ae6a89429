import { doubtNotices } from '../../book/doubts';
import type { ComparedRevision, Comparison } from '../../shared/comparison';
import { targetLinesOn } from '../text/targets';

/**
 * How the pictures that something is said of are printed and what their forecasts rest on; twice where the settings changed
 * that. Nothing where nothing is said of any.
 */
export function conditions(comparison: Comparison): string[] {
  if (!saysAnything(comparison)) return [];
  const { base, head } = comparison;
  const lines = ({ targets }: ComparedRevision, ...sides: ComparedRevision[]) =>
    targetLinesOn(targets, ({ name }) => [...new Set(sides.flatMap(({ grounds }) => grounds[name] ?? []))]);
  if (JSON.stringify(base.targets) === JSON.stringify(head.targets)) return lines(head, base, head);
  // of a book that was none nobody asks how it was printed
  if (!base.pictures) return lines(head, head);
  return [
    ...lines(base, base).map(line => `Before: ${line}`),
    ...lines(head, head).map(line => `After: ${line}`),
  ];
}

/** The notices that the conditions do not tell already. */
export function remarks(comparison: Comparison): string[] {
  const { head, notices } = comparison;
  const told = new Set(saysAnything(comparison) ? head.targets.flatMap(doubtNotices) : []);
  return notices.filter(notice => !told.has(notice));
}

/** Whether anything is said of how the book may print. */
export const forecasts = (comparison: Comparison): boolean =>
  saysAnything(comparison) && [comparison.base, comparison.head].some(({ targets }) => targets.length > 0);

/** Of pictures that changed, or that are judged otherwise though they did not. */
const saysAnything = ({ changes, settings, others }: Comparison): boolean =>
  changes.length > 0 || settings.changes.length > 0 || others.length > 0;
