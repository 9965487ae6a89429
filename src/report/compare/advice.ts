// no-unit-test: test/report/compare/set.test.ts and github.test.ts read what comes of it
import { list } from '../../rules/words';
import type { Comparison } from '../../shared/comparison';

/** So many pictures are named in one sentence. */
const NAMED = 5;

/** What pictures that did not change are to be saved as, where it is another than before: a sentence for all alike. */
export const adviceLines = ({ advice, head }: Pick<Comparison, 'advice' | 'head'>): string[] =>
  advice.map(({ target, before, after, pictures }) => {
    const [themselves, them] = pictures.length === 1 ? ['itself', 'it'] : ['themselves', 'them'];
    const on = target !== null && head.targets.length > 1 ? ` (${target})` : '';
    return `The advice for ${list(pictures, NAMED)}, unchanged ${themselves}, is another now${on}: save ${them} as ${after}; before, as ${before}.`;
  });
