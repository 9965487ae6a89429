import fs from 'node:fs/promises';
import path from 'node:path';
import { RemedyError } from '../remedy-error';
import { type Entry, journal, type Lines } from './journal';
import { sweep } from './temporary';

/** Where originals and the journal of what replaced them lie. */
export interface Keep {
  /** Absolute; need not be there yet. */
  folder: string;
  /** The folder that paths in the journal count from: it holds the repository, or the keep itself. */
  top: string;
}

const NAME = 'evengrey';
const HIDDEN = '.evengrey';

/**
 * The keep of the book at `root` (absolute, links resolved): in the folder that git shares among all working trees, so
 * that no clean-up deletes it and no commit carries it; outside a repository in a hidden folder that ignores itself,
 * one that is there already or else the book's own.
 */
export async function keepOf(root: string): Promise<Keep> {
  const all = await keepsAbove(root);
  return (
    all.find(keep => path.basename(keep.folder) === NAME) ??
    all[0] ?? { folder: path.join(root, HIDDEN), top: root }
  );
}

/** Every keep that may know of a file in `folder`, nearest first: a book can have been put into a repository later. */
export async function keepsAbove(folder: string): Promise<Keep[]> {
  const keeps: Keep[] = [];
  for (let top = folder; ; top = path.dirname(top)) {
    const git = await gitFolder(top);
    if (git) keeps.push({ folder: path.join(git, NAME), top });
    if (await isRealFolder(path.join(top, HIDDEN))) keeps.push({ folder: path.join(top, HIDDEN), top });
    if (path.dirname(top) === top) return keeps;
  }
}

/** A keep that originals can be put into. */
export interface OpenKeep extends Keep {
  journal: Lines<Entry>;
}

/**
 * Makes the keep's folders, and tidies up what a killed run left in them.
 * @throws RemedyError where something else lies there; what the file system says
 */
export async function openKeep(keep: Keep): Promise<OpenKeep> {
  const { folder } = keep;
  for (const each of [folder, originalsIn(folder)]) {
    await fs.mkdir(each).catch(unlessThere);
    if (!(await isRealFolder(each)))
      throw new RemedyError(`"${each}" is a link, so no original is kept there. Nothing was changed.`);
  }
  if (path.basename(folder) === HIDDEN) await ignoreItself(folder);
  await Promise.all([folder, originalsIn(folder)].map(sweep));
  return { ...keep, journal: journalOf(keep) };
}

export const journalOf = ({ folder }: Keep) => journal(path.join(folder, 'journal'));
export const originalsIn = (folder: string) => path.join(folder, 'originals');

/** A file as a keep's journal names it. */
export const pathIn = ({ top }: Keep, file: string) => path.relative(top, file).split(path.sep).join('/');

function unlessThere(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EEXIST') throw error;
}

async function ignoreItself(folder: string): Promise<void> {
  const file = path.join(folder, '.gitignore');
  if ((await fs.readFile(file, 'utf8').catch(() => '')) !== '*\n') await fs.writeFile(file, '*\n');
}

/** The folder that git's working trees share (gitrepository-layout(5)), where `top` holds a repository; else null. */
async function gitFolder(top: string): Promise<string | null> {
  const entry = path.join(top, '.git');
  const stat = await fs.stat(entry).catch(() => null);
  if (!stat) return null;
  const own = stat.isDirectory() ? entry : await named(entry, /^gitdir: (.+)$/m, top);
  if (!own) return null;
  const common = (await named(path.join(own, 'commondir'), /^(.+)$/m, own)) ?? own;
  const whole = await Promise.all(
    [path.join(own, 'HEAD'), path.join(common, 'objects')].map(file => fs.stat(file).catch(() => null)),
  );
  return whole.every(Boolean) ? common : null;
}

/** The path that a small file names, relative to `from`. */
async function named(file: string, pattern: RegExp, from: string): Promise<string | null> {
  const text = await fs.readFile(file, 'utf8').catch(() => '');
  const written = pattern.exec(text)?.[1].trim();
  return written ? path.resolve(from, written) : null;
}

const isRealFolder = (folder: string): Promise<boolean> =>
  fs.lstat(folder).then(
    stat => stat.isDirectory(),
    () => false,
  );
