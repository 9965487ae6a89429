// no-unit-test: test/book/comparison/compare-layouts.test.ts compares books that lose pictures so
import { count, list } from '../../rules/words';
import type { PictureChange, TakenIn } from '../../shared/comparison';
import { IGNORE_FILES } from '../discovery/ignored';
import type { Change } from '../git/changes';
import { leftOutNotice, notThereNotice } from '../layouts/laid-out';
import type { Side } from '../revisions/side';
import { contentsOf } from '../revisions/source';
import { SETTINGS_FILE } from '../settings/settings-file';

type Looking = Pick<
  Side,
  'settings' | 'snapshot' | 'pages' | 'placements' | 'leftOut' | 'notInBook' | 'notThere'
>;

/** What a change takes out of the check, though it may print all the same. */
export interface Unlooked {
  /** Pictures that were looked at, are still there, and are left out by settings or an ignore file since. */
  pictures: string[];
  /** Pictures that are placed since and left out so: nobody ever looked at them. */
  never: string[];
  /** Lines of layouts that take in a text which is not there since. */
  texts: TakenIn[];
  /** In sentences, with what else takes pictures out of the book that are still there. */
  notices: string[];
}

/** What was looked at before and is not any more, or is placed since and is not, though nothing says that it is not printed. Pure. */
export function unlooked(
  changes: readonly Pick<Change, 'path' | 'from'>[],
  base: Looking,
  head: Looking,
  still: Still,
): Unlooked {
  // of a book that was none nothing is said otherwise
  const by = base.snapshot.size ? changedChoosing(changes, base, head) : [];
  const calledBefore = new Map(changes.map(({ path, from }) => [path, from ?? path]));
  const wasLookedAt = (path: string) => base.pages.has(calledBefore.get(path) ?? path);
  const left = (how: PictureChange['still']) => [...base.pages.keys()].filter(path => still(path) === how);
  const unplaced = left('unplaced');
  const chosen = left('left-out');
  const placed = head.leftOut.filter(path => !base.leftOut.includes(path));
  const keyOf = ({ file, path }: TakenIn) => JSON.stringify([file, path]);
  const known = new Set(base.notThere.map(keyOf));
  const texts = head.notThere
    .filter(one => !known.has(keyOf(one)))
    .map(({ file, line, path }) => ({ file, line, path }));
  return {
    pictures: [...new Set([...placed.filter(wasLookedAt), ...chosen])].sort(),
    never: placed.filter(path => !wasLookedAt(path)).sort(),
    texts,
    notices: [
      ...texts.map(notThereNotice),
      ...(by.length
        ? [
            chosenNotice(
              by,
              chosen,
              chosen.filter(path => !placed.includes(path)),
            ),
          ]
        : []),
      ...leftOutNotice(placed, head.placements),
      ...(unplaced.length ? [unplacedNotice(unplaced)] : []),
    ],
  };
}

/** Why a picture of before is not in the book though its file is still there; null: it is in the book, or it is not there. */
export type Still = (path: string) => PictureChange['still'];

/** Settings, an ignore file or a layout can take a picture out of the book and leave its file where it is. */
export async function stillIn(
  head: Pick<Side, 'pages' | 'notInBook' | 'tree'>,
  before: Iterable<string>,
): Promise<Still> {
  const out = [...before].filter(path => !head.pages.has(path));
  const there = await contentsOf(out, head.tree);
  return path => (there.has(path) ? (head.notInBook.includes(path) ? 'unplaced' : 'left-out') : null);
}

/** `unplaced`: those of `out` that no layout places; the others are told with their lines. */
function chosenNotice(by: readonly string[], out: readonly string[], unplaced: readonly string[]): string {
  const what = `Which pictures are checked is said otherwise than before, by ${list(by)}:`;
  if (!out.length) return `${what} none that is still there is left out for it.`;
  const are = out.length === 1 ? 'is' : 'are';
  const named = unplaced.length ? `; no layout places ${list(unplaced, NAMED)}` : '';
  return `${what} ${count(out.length, 'picture')} that ${are} still there ${are} left out since${named}.`;
}

function unplacedNotice(unplaced: readonly string[]): string {
  const [are, they] = unplaced.length === 1 ? ['is', 'it is'] : ['are', 'they are'];
  return `${count(unplaced.length, 'picture')} that ${are} still there ${are} placed by no layout any more, so ${they} not in the book: ${list(unplaced, NAMED)}.`;
}

/** So many pictures are named. */
const NAMED = 5;

/** What says which pictures are looked at and is not what it was: settings, then ignore files. */
function changedChoosing(
  changes: readonly Pick<Change, 'path' | 'from'>[],
  base: Looking,
  head: Looking,
): string[] {
  const keys = (['pictures', 'ignore'] as const).filter(
    key => JSON.stringify(base.settings[key]) !== JSON.stringify(head.settings[key]),
  );
  const files = changes
    .flatMap(({ path, from }) => [path, ...(from === null ? [] : [from])])
    .filter(path => IGNORE_FILES.includes(path.slice(path.lastIndexOf('/') + 1)));
  return [...keys.map(key => `"${key}" in ${SETTINGS_FILE}`), ...new Set(files)];
}
