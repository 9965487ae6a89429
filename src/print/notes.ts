import type { Target } from '../shared/target';
import { paperOf } from './papers';
import { processOf } from './processes';
import type { RouteResult } from './route-result';

/** What a target asks for beyond its condition, and whether it changes anything by these ways: plain sentences. */
export function notesOn({ separatedFor }: Target, results: readonly RouteResult[]): string[] {
  if (!separatedFor) return [];
  const { inSentence } = processOf(separatedFor.process);
  const made = `${inSentence} (${paperOf(separatedFor.paper).name})`;
  return results.some(({ option }) => option.handling.kind === 'separated')
    ? [`Where the picture is separated, that is done for ${made}, and those inks are printed here.`]
    : [`Nothing is separated here: that it would be for ${made} changes nothing.`];
}
