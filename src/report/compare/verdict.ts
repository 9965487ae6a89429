import { count } from '../../rules/words';
import type { FindingChanges, PageChange, PictureChange } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import type { ChangeVerdict } from '../../shared/review';
import { breaks, leavesBlank, wasThere } from './blank';

/**
 * What a change does to a picture, by the errors and warnings that came and went. What a rule that is `off` now said has not
 * ended: nothing of the picture is better for it.
 */
export function verdictOn(
  change: Pick<PictureChange, 'kind' | 'pages' | 'still'>,
  off: readonly string[] = [],
): ChangeVerdict {
  if (leavesBlank(change))
    return {
      kind: 'worse',
      words: wasThere(change)
        ? 'Not there any more, and still placed: its place stays blank'
        : 'Placed and not there: its place stays blank',
    };
  if (breaks(change))
    return {
      kind: 'worse',
      words: change.kind === 'added' ? 'New, and cannot be read' : 'Cannot be read any more',
    };
  const weighed = weighedOf(change, off);
  const [fresh, ended, stays] = [weighed.new.length, weighed.ended.length, weighed.unchanged.length];
  const waived = count(weighed.waived.length, 'waived finding');
  switch (change.kind) {
    case 'deleted':
      return {
        kind: 'gone',
        words: change.still === 'left-out' ? 'Not checked any more' : 'Gone from the book',
      };
    case 'mode':
      return { kind: 'same', words: 'Prints as before: only its file mode changed' };
    case 'added':
      return fresh
        ? { kind: 'worse', words: `New, with ${count(fresh, 'finding')} against it` }
        : {
            kind: 'same',
            words: weighed.waived.length
              ? `New, with nothing against it but ${waived}`
              : 'New, with no error or warning',
          };
  }
  if (fresh && ended)
    return { kind: 'mixed', words: `Otherwise than before: ${count(fresh, 'new finding')}, ${ended} ended` };
  if (fresh) return { kind: 'worse', words: `Worse than before: ${count(fresh, 'new finding')}` };
  if (ended) return { kind: 'better', words: `Better than before: ${count(ended, 'finding')} ended` };
  if (!stays && weighed.waived.length)
    return { kind: 'same', words: `Nothing stands against it but ${waived}` };
  return {
    kind: 'same',
    words: stays
      ? `As before: ${count(stays, 'finding')} ${stays === 1 ? 'stays' : 'stay'}`
      : 'As before: no error or warning',
  };
}

/** The findings that the verdict goes by; those that are waived speak where no others do. */
export function weighedOf(
  { pages }: Pick<PictureChange, 'pages'>,
  off: readonly string[] = [],
): FindingChanges & Pick<PageChange, 'waived'> {
  const all = (which: keyof FindingChanges) =>
    pages.flatMap(({ findings }) => findings[which].filter(isLoud));
  return {
    new: all('new'),
    ended: all('ended').filter(({ rule }) => !off.includes(rule)),
    unchanged: all('unchanged'),
    waived: pages.flatMap(({ waived }) => waived.filter(isLoud)),
  };
}

/** Whether it speaks against a picture: also that it is another one of the book, whatever the note counts for. */
export const isLoud = ({ rule, severity }: Pick<Finding, 'rule' | 'severity'>): boolean =>
  severity !== 'note' || rule === 'same-picture';
