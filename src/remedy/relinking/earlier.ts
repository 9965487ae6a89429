// no-unit-test: test/remedy/relinking/again.test.ts relinks by it
import path from 'node:path';
import { mirroredNames, originalName } from '../../book/original-names';
import { isWithin } from '../../book/settings/within';
import type { Asked, Place } from '../plan/types';
import type { Results } from '../results';
import { sourceOf } from '../unkept';
import type { Relink } from './memory';

type OriginalsOf = (result: string) => readonly string[];

/** Pictures by the results that lines were made to place. */
export const rememberedOriginals = (relinks: readonly Relink[]): ReadonlyMap<string, string> =>
  new Map(relinks.map(({ result, original }) => [result, original]));

/**
 * Says which pictures a file may be the result of: by what is remembered, else by its name. Paths are relative to the
 * root.
 */
export function originalsBy(
  remembered: ReadonlyMap<string, string>,
  realRoot: string,
  place: Place,
): OriginalsOf {
  const apart = place.kind === 'folder' && isWithin(realRoot, place.folder) ? place.folder : null;
  return result => {
    const known = remembered.get(result) ?? originalName(result);
    if (known !== null) return [known];
    const file = path.join(realRoot, result);
    if (apart === null || !isWithin(apart, file)) return [];
    return mirroredNames(path.relative(apart, file).split(path.sep).join('/'));
  };
}

/** Says which results of a picture are among those that lines place. */
export function earlierResults(
  placed: Iterable<string>,
  originalsOf: OriginalsOf,
): (asked: Pick<Asked, 'path' | 'link'>) => readonly string[] {
  const results = new Map<string, string[]>();
  for (const file of placed)
    for (const original of originalsOf(file))
      if (original !== file) results.set(original, [...(results.get(original) ?? []), file]);
  return ({ path: at, link }) => [at, link].flatMap(name => (name === null ? [] : (results.get(name) ?? [])));
}

/**
 * Why lines that place what seems to be an earlier result of a picture are not to place a newer one: there may be
 * somebody's work in it. Null: they are.
 * @param at relative to the root
 */
export async function staysPlaced(
  at: string,
  realRoot: string,
  { path: original, pages: [{ sha256 }] }: Asked,
  results: Results,
): Promise<string | null> {
  const file = path.join(realRoot, at);
  const existing = await results.at(file);
  if (existing.kind === 'nothing') return null;
  if (existing.kind === 'file' && (existing.made || existing.sha256 === sha256)) return null;
  if (await results.had(file))
    return `"${at}" stays on the page: it was changed since it was made of "${original}", and there may be work of yours in it. Place the new result yourself if that is to be printed.`;
  return (await sourceOf(file))
    ? null
    : `"${at}" stays on the page: it is called like a result of "${original}", and nothing says that it is one. Place the new result yourself if that is to be printed.`;
}
