import { doubtNotices } from '../../book/doubts';
import type { ComparedRevision, Comparison } from '../../shared/comparison';
import { targetLines } from '../text/targets';

/** How the changed pictures are printed and what their forecasts rest on; twice where the settings changed that. */
export function conditions({ base, head, changes }: Comparison): string[] {
  if (!changes.length) return [];
  const lines = ({ targets }: ComparedRevision, sides: ('before' | 'after')[]) =>
    targetLines({
      targets,
      pictures: changes.flatMap(({ pages }) =>
        pages.flatMap(page => sides.flatMap(side => page[side] ?? [])),
      ),
    });
  if (JSON.stringify(base.targets) === JSON.stringify(head.targets)) return lines(head, ['before', 'after']);
  return [
    ...lines(base, ['before']).map(line => `Before: ${line}`),
    ...lines(head, ['after']).map(line => `After: ${line}`),
  ];
}

/** The notices that the conditions do not tell already. */
export function remarks({ head, changes, notices }: Comparison): string[] {
  const told = new Set(changes.length ? head.targets.flatMap(doubtNotices) : []);
  return notices.filter(notice => !told.has(notice));
}

/** Whether anything is said of how the book may print. */
export const forecasts = ({ head, changes, settings }: Comparison): boolean =>
  settings.forecasts.length > 0 || (head.targets.length > 0 && changes.length > 0);
