import { normalised, type Resolution } from './resolve';
import type { Reference } from './types';
import { latexWritten, written } from './writing';

/** `text` with the path of one reference replaced and nothing else touched; `newPath` as for `pathWritten`. */
export const relink = (text: string, reference: Reference, newPath: string): string =>
  text.slice(0, reference.start) + pathWritten(text, reference, newPath) + text.slice(reference.end);

/**
 * What is to stand in `text` in place of a reference's path. `newPath` is plain, as `pathFrom` gives it: it is written by
 * the rules of the language and of the quotes that stand there.
 */
export const pathWritten = (text: string, { start, writing }: Reference, newPath: string): string =>
  writing[0] === 'latex' ? latexWritten(newPath, text[start - 1] === '"') : written(newPath, writing);

/**
 * How a reference names another picture of the book (`picture`, relative to the root): from the same folder (`base`) and
 * in the same form as it did before. Null where what stands round it, such as an extension that a macro adds, cannot
 * name it.
 */
export function pathFrom(
  reference: Reference,
  { base }: Pick<Extract<Resolution, { kind: 'found' }>, 'base'>,
  picture: string,
): string | null {
  const { path, before, after } = reference;
  if (!picture.endsWith(after)) return null;
  const target = picture.slice(0, picture.length - after.length);
  const slash = before.lastIndexOf('/') + 1;
  const folder = [base, before.slice(0, slash)].filter(Boolean).join('/');
  const relative = relativeTo(normalised(folder) ?? '', target);
  const stem = before.slice(slash);
  if (!relative.startsWith(stem)) return null;
  const bare = relative.slice(stem.length);
  if (before) return bare;
  if (path.startsWith('/')) return bare.startsWith('../') ? null : `/${bare}`;
  return path.startsWith('./') && !bare.startsWith('../') ? `./${bare}` : bare;
}

function relativeTo(folder: string, target: string): string {
  const from = folder.split('/').filter(Boolean);
  const to = target.split('/');
  let common = 0;
  while (common < from.length && common < to.length - 1 && from[common] === to[common]) common++;
  return [...from.slice(common).map(() => '..'), ...to.slice(common)].join('/');
}
