import path from 'node:path';
import { namesPicture } from './discovery/extensions';
import { suggest } from './settings/suggest';

/** A name of fewer letters is as near to any other. */
const FEWEST = 3;

/**
 * The picture that was probably meant by a path that leads to none: one in the same folder whose name is near, else the
 * only one of that very name in another. Null: nobody can say. The extension, which LaTeX leaves out, is free.
 */
export function nearPicture(written: string, pictures: readonly string[]): string | null {
  const [folder, name] = partsOf(written);
  const beside = pictures.filter(picture => partsOf(picture)[0] === folder);
  const near = suggest(name, namesOf(beside));
  if (near !== null && (near.length >= FEWEST || near === name))
    return beside.find(picture => partsOf(picture)[1] === near)!;
  const elsewhere = pictures.filter(picture => partsOf(picture)[1] === name);
  return elsewhere.length === 1 ? elsewhere[0] : null;
}

const namesOf = (pictures: readonly string[]) => pictures.map(picture => partsOf(picture)[1]);

/** Its folder, and its name without extension. */
function partsOf(picture: string): [folder: string, name: string] {
  const { dir, base, name } = path.posix.parse(picture.normalize('NFC'));
  return [dir, namesPicture(base) ? name : base];
}
