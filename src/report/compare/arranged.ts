import { list } from '../../rules/words';
import type { Comparison, PictureChange, Rearranged } from '../../shared/comparison';

/** So many pictures that stand elsewhere are named. */
const NAMED = 12;

/** `p4.jpg: faced p3.jpg, now p1.jpg`: a line a picture, and how many more there are. */
export function arrangedLines({ rearranged }: Pick<Comparison, 'rearranged'>): string[] {
  const more = rearranged.length - NAMED;
  return [...rearranged.slice(0, NAMED).map(line), ...(more > 0 ? [`and ${more} more`] : [])];
}

/** Whether a picture that changed stands on a spread with others than before. */
export const facesOthers = ({
  faced,
  neighbours: { beside },
}: Pick<PictureChange, 'faced' | 'neighbours'>): boolean =>
  faced.length !== beside.length || faced.some(name => !beside.includes(name));

function line({ path, before, after }: Rearranged): string {
  const [was, is] = [before, after].map(({ facing }) => [...facing].sort());
  if (was.join('\n') !== is.join('\n'))
    return `${path}: faced ${list(was) || 'no other'}, now ${list(is) || 'no other'}`;
  const source = before.layout !== after.layout;
  const stands = (stand: Rearranged['before']) =>
    `${stand.after === null ? 'first' : `after ${stand.after}`}${source && stand.layout !== null ? ` in ${stand.layout}` : ''}`;
  return `${path}: stood ${stands(before)}, now ${stands(after)}`;
}
