import fs from 'node:fs/promises';
import path from 'node:path';
import { kindOf } from '../../layout';
import { discover } from '../discovery/discover';

export type Within =
  | { ok: true; file: string; relative: string }
  /** `missing`: there is nothing at all; `other`: what is there must not be read, `folder` since it is one. */
  | { ok: false; why: 'missing' | 'other'; folder?: true; message: string };

/** `inner` is `outer` itself or lies in it. Both absolute. */
export function isWithin(outer: string, inner: string): boolean {
  const relative = path.relative(outer, inner);
  return (
    relative === '' ||
    !(relative === '..' || relative.startsWith(`..${path.sep}`) || path.isAbsolute(relative))
  );
}

/**
 * Looks at a file that settings name before anything opens it: it must be a regular file of the book's folder, and so
 * must what a symbolic link leads to. `written` is relative to `folder`.
 */
export async function fileWithin(root: string, folder: string, written: string): Promise<Within> {
  const file = path.resolve(folder, written);
  const other = (message: string): Within => ({ ok: false, why: 'other', message });
  if (!isWithin(root, file))
    return other(`"${written}" lies outside the book's folder. Copy it into the folder and name it there.`);
  try {
    const stat = await fs.stat(file);
    if (!stat.isFile())
      return { ...other(`"${written}" is not a file.`), ...(stat.isDirectory() && { folder: true }) };
    if (!isWithin(await fs.realpath(root), await fs.realpath(file)))
      return other(
        `"${written}" is a link that leads out of the book's folder. Copy the file itself into it.`,
      );
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT' || code === 'ENOTDIR')
      return { ok: false, why: 'missing', message: `There is no file "${written}".` };
    return other(`"${written}" cannot be read (${code}).`);
  }
  return { ok: true, file, relative: path.relative(root, file).split(path.sep).join('/') };
}

/** Bytes of a file that `fileWithin` has passed. @throws what the file system says, or that it is larger than `most` */
async function readBytes(file: string, most: number): Promise<Uint8Array> {
  const { size } = await fs.stat(file);
  if (size > most) throw new TooLarge(most);
  return fs.readFile(file);
}

export class TooLarge extends Error {
  constructor(most: number) {
    super(`is larger than ${most / 1024 / 1024} MB`);
  }
}

/** Where settings, and what they name, are looked for and read. */
export interface SettingsFiles {
  within: typeof fileWithin;
  bytes: typeof readBytes;
  /** Every layout source in a folder, relative to it, to tell which one was meant. */
  layouts(root: string): Promise<string[]>;
}

export const disk: SettingsFiles = { within: fileWithin, bytes: readBytes, layouts: layoutsIn };

async function layoutsIn(root: string): Promise<string[]> {
  const wanted = (name: string) => kindOf(name) !== null;
  const { files } = await discover({ root, paths: [root], settings: { pictures: null, ignore: [] }, wanted });
  return files.map(file => file.path);
}
