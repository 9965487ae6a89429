import { list } from '../../rules/words';
import type { Comparison, PictureChange, Rearranged, Stand } from '../../shared/comparison';

/** So many lines are told. */
const LINES = 12;

/** `p4.jpg: faced p3.jpg, now p1.jpg`: a line for all that went the same way together, and how many more pictures there are. */
export function arrangedLines({ rearranged }: Pick<Comparison, 'rearranged'>): string[] {
  const groups: Rearranged[][] = [];
  for (const one of rearranged) {
    const last = groups.at(-1);
    if (last && facesTheSame(last[0].before, last[0].after) && goesAlong(one, last.at(-1)!)) last.push(one);
    else groups.push([one]);
  }
  const more = groups.slice(LINES).flat().length;
  return [...groups.slice(0, LINES).map(line), ...(more > 0 ? [`and ${more} more`] : [])];
}

/** Whether all that happened to it is that it still follows another, which went elsewhere. */
const goesAlong = ({ before, after }: Rearranged, leader: Rearranged): boolean =>
  after.after === leader.path &&
  before.after === leader.path &&
  facesTheSame(before, after) &&
  before.layout === leader.before.layout &&
  after.layout === leader.after.layout;

const facesTheSame = (before: Stand, after: Stand): boolean =>
  [...before.facing].sort().join('\n') === [...after.facing].sort().join('\n');

/** Whether a picture that changed stands on a spread with others than before. */
export const facesOthers = ({
  faced,
  neighbours: { beside },
}: Pick<PictureChange, 'faced' | 'neighbours'>): boolean =>
  faced.length !== beside.length || faced.some(name => !beside.includes(name));

/** Only what is otherwise of where it stands. */
function line([{ path, before, after }, ...others]: Rearranged[]): string {
  const who = others.length ? `${path} and the ${others.length} after it` : path;
  if (!facesTheSame(before, after)) {
    const [was, is] = [before, after].map(({ facing }) => list([...facing].sort()) || 'no other');
    return `${who}: faced ${was}, now ${is}`;
  }
  // that no layout places it, or places it since, is seen by its order alone
  const source = before.layout !== null && after.layout !== null && before.layout !== after.layout;
  const follows = before.after !== after.after;
  if (!source && !follows) return `${who}: elsewhere, after ${after.after} as before`;
  const stands = (stand: Stand) =>
    [
      follows ? (stand.after === null ? 'first' : `after ${stand.after}`) : '',
      source ? `in ${stand.layout}` : '',
    ]
      .filter(Boolean)
      .join(' ');
  return `${who}: stood ${stands(before)}, now ${stands(after)}`;
}
