// no-unit-test: test/book/comparison/compare.test.ts reads what compared books are told with
import { count, list } from '../../rules/words';
import type { PictureFacts } from '../../shared/picture';
import { doubtNotices } from '../doubts';
import { type Idle, idleNotice } from '../idle-settings';
import { beyondNotice, toldOf } from '../revisions/told';
import type { Split } from '../waivers/apply';
import { WAIVERS_FILE } from '../waivers/file';
import { keyOf } from '../waivers/key';
import { staleWords } from '../waivers/notices';
import type { Contents } from './contents';
import type { Ends } from './ends';
import type { Sides } from './sides';

/** What notices are made of. */
export interface Noticed {
  ends: Pick<Ends, 'changes' | 'renamesFollowed'>;
  sides: Sides;
  judged: { before: Split; after: Split };
  same: readonly (readonly [path: string, { oid: string }])[];
  known: Contents['known'];
  /** What the settings say in vain since. */
  idle: readonly Idle[];
  /** What is no longer looked at. */
  outOfSight: readonly string[];
}

/** What a reader of a comparison has to know beside its findings, in sentences. */
export async function noticesOf({
  ends,
  sides: { base, head },
  judged,
  same,
  known,
  idle,
  outOfSight,
}: Noticed): Promise<string[]> {
  return [
    ...(head.snapshot.size ? [] : [GONE]),
    ...(ends.renamesFollowed ? [] : [NO_RENAMES]),
    ...outOfSight,
    ...(await toldOf(ends.changes, base, head)),
    ...beyondNotice(head),
    ...idle.map(idleNotice),
    ...leftOut(same, known),
    ...waivedNotice(judged.after),
    ...(known ? staleNotice(judged) : []),
    ...head.settings.targets.flatMap(doubtNotices),
  ];
}

const GONE = "There is nothing in the book's folder any more.";
const NO_RENAMES =
  'Some contents are not in this clone, so a picture that was renamed and changed is told as one deleted and one added.';

/** Of the unchanged pictures those that could not be compared with the others: one of them must not stop the rest. */
function leftOut(
  same: Noticed['same'],
  known: ReadonlyMap<string, readonly PictureFacts[]> | null,
): string[] {
  const names = same
    .filter(([, { oid }]) => known?.get(oid)?.every(({ unreadable }) => unreadable))
    .map(([path]) => path);
  if (!names.length) return [];
  const one = names.length === 1;
  return [
    `${list(names, NAMED)} did not change and cannot be read, so the others were compared without ${one ? 'it' : 'them'}.`,
  ];
}

/** So many of them are named. */
const NAMED = 5;

function waivedNotice({ pictures, waived }: Split): string[] {
  const many = pictures.reduce((sum, picture) => sum + (picture.waived?.length ?? 0), waived.length);
  if (!many) return [];
  return [
    `${count(many, 'finding')} ${many === 1 ? 'is' : 'are'} waived by ${WAIVERS_FILE} and ${many === 1 ? 'does' : 'do'} not count.`,
  ];
}

/** Waivers that the change leaves behind, or brings, and that waive nothing. */
function staleNotice({ before, after }: { before: Split; after: Split }): string[] {
  const were = new Set(before.unused.map(keyOf));
  const stale = after.unused.filter(waiver => !were.has(keyOf(waiver)));
  return stale.length ? [`Since this change ${staleWords(WAIVERS_FILE, stale, after)}`] : [];
}
