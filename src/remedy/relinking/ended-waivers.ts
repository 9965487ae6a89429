import { readWaivers } from '../../book/waivers/file';
import { count, list } from '../../rules/words';

const NAMED = 5;

/**
 * What a person should know of waivers of pictures whose results take their place: a waiver is of one content, so a
 * result is judged anew. Null where there are none.
 * @param replaced SHA-256 of the pictures
 */
export async function endedWaivers(root: string, replaced: readonly string[]): Promise<string | null> {
  if (!replaced.length) return null;
  const contents = new Set(replaced);
  const { waivers, file } = await readWaivers(root);
  const ended = waivers.filter(({ content }) => content.some(each => contents.has(each)));
  if (!ended.length) return null;
  const names = ended.map(({ rule, picture }) => (picture ? `${rule} on ${picture}` : rule));
  const [are, they, waive] = ended.length === 1 ? ['is', 'it', 'waives'] : ['are', 'they', 'waive'];
  return `${count(ended.length, 'waiver')} of ${file} ${are} of pictures whose results take their place: ${list(names, NAMED)}. The results are judged anew, so ${they} ${waive} nothing then. "evengrey check --waive" takes out what is stale; after --undo ${they} ${ended.length === 1 ? 'holds' : 'hold'} again.`;
}
