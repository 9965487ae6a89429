// no-unit-test: test/cli/actions/since.test.ts has the built program check books whose majority turns
import type { PictureFacts } from '../../shared/picture';
import { NotInCloneError } from '../git/git';
import type { JudgedBook } from '../judge-book';
import { splitWaived } from '../waivers/apply';
import { changesOf, claimsOn } from './claims';
import { type BlobReading, readBlobs } from './read';
import { judgeSide, type Side } from './side';

/**
 * What was said of the book as it was, and not waived. Null where contents of it are not in this clone, so that nobody knows.
 * @param same facts of pictures that are what they were, by path
 */
export async function judgedBefore(
  before: Side,
  same: ReadonlyMap<string, readonly PictureFacts[]>,
  reading: BlobReading,
): Promise<JudgedBook | null> {
  const others = [...before.pages].filter(([path]) => !same.has(path));
  try {
    const read = await readBlobs(
      others.map(([path, { oid }]) => ({ path, oid })),
      reading,
    );
    const factsOf = (path: string) => same.get(path) ?? read.get(before.pages.get(path)!.oid);
    const judged = await judgeSide(before, path => [...factsOf(path)!], { signal: reading.signal });
    return splitWaived(judged, before.waivers);
  } catch (error) {
    if (error instanceof NotInCloneError) return null;
    throw error;
  }
}

/** Pictures that did not change, and of which something is said since others did: a warning or an error. */
export function drawnIn(before: JudgedBook, after: JudgedBook, unchanged: ReadonlySet<string>): string[] {
  const was = new Map(before.pictures.map(picture => [`${picture.facts.page} ${picture.path}`, picture]));
  const drawn = after.pictures.filter(picture => {
    const then = unchanged.has(picture.path) && was.get(`${picture.facts.page} ${picture.path}`);
    if (!then) return false;
    const said = changesOf(claimsOn(then, before.findings), claimsOn(picture, after.findings));
    return said.new.some(({ severity }) => severity !== 'note');
  });
  return [...new Set(drawn.map(({ path }) => path))];
}
