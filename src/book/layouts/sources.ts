// no-unit-test: test/book/layouts/index.test.ts reads books by it
import fs from 'node:fs/promises';
import { handsOn, isAbout, isOwnPage, kindOf, type LayoutKind } from '../../layout';
import { discover, type Found } from '../discovery/discover';
import { matcher } from '../discovery/globs';
import { headOf } from '../head';
import { inLanes } from '../lanes';
import type { Settings } from '../settings/settings';
import { type FileText, fileText } from './encoding';

/** A layout of more than this was written by a program, with its pictures inside. */
export const MOST_BYTES = 4 * 1024 * 1024;
const READING = 8;

/** A layout source with its text. */
export interface LayoutFile extends FileText {
  /** Relative to the root, forward slashes. */
  path: string;
  file: string;
  kind: LayoutKind;
  bytes: Buffer;
  /**
   * The settings name others: it is read for what it hands on to those that it takes in, and places pictures where one that
   * they name takes it in.
   */
  around?: true;
}

export interface LayoutFiles {
  /** Sorted by path. */
  files: LayoutFile[];
  /** `around`: none that the settings name. */
  notRead: { path: string; why: string; around?: true }[];
}

export interface Reading {
  /** Texts that an editor has open and has not saved, by path relative to the root: they go before what is stored. */
  open?: ReadonlyMap<string, string>;
  signal?: AbortSignal;
}

/** Says of a path whether it is a source that lays out the book. */
export function isLayout({ layouts }: Pick<Settings, 'layouts'>): (path: string) => boolean {
  const named = layouts && matcher(layouts);
  return path => kindOf(path) !== null && (named ? named(path) : !isAbout(path));
}

/**
 * Says of a path whether it may hand something on to layouts that the settings name, or be taken in by one: a main file
 * that takes in listed chapters says where their pictures lie, listed or not.
 */
export function mayBeAround({ layouts }: Pick<Settings, 'layouts'>): (path: string) => boolean {
  const named = layouts?.length ? matcher(layouts) : null;
  return path => {
    const kind = kindOf(path);
    return named !== null && kind !== null && handsOn(kind) && !named(path) && !isAbout(path);
  };
}

/**
 * Reads the sources that lay out the book at `root` (absolute): those that `layouts` names, else every one in the
 * folder but readmes and our own pages; with the named ones those that may be round them, or taken in by them. Ignore files and `ignore` are obeyed as for pictures; nothing outside the root is opened.
 */
export async function layoutFiles(
  root: string,
  settings: Pick<Settings, 'layouts' | 'ignore'>,
  { open, signal }: Reading = {},
): Promise<LayoutFiles> {
  const [isSource, isAround] = [isLayout(settings), mayBeAround(settings)];
  const wanted = (path: string) => isSource(path) || isAround(path);
  const found =
    settings.layouts?.length === 0
      ? []
      : (await discover({ root, paths: [root], settings: { ...settings, pictures: null }, wanted, signal }))
          .files;
  const read = await inLanes(found, READING, async source => {
    signal?.throwIfAborted();
    if (await isOurs(source)) return null;
    const text = await textOf(source, open?.get(source.path));
    return isAround(source.path) ? { ...text, around: true as const } : text;
  });
  return {
    files: read.flatMap(one => (one && 'bytes' in one ? [one] : [])),
    notRead: read.flatMap(one => (one && 'why' in one ? [one] : [])),
  };
}

/** Our own page of the book shows its pictures, and would place them all; it can be larger than what is read, too. */
async function isOurs({ path, file, obstacle }: Found): Promise<boolean> {
  if (obstacle || kindOf(path) !== 'html') return false;
  return isOwnPage((await headOf(file).catch(() => Buffer.alloc(0))).toString('utf8'));
}

async function textOf(
  { path, file, obstacle }: Found,
  open: string | undefined,
): Promise<LayoutFile | { path: string; why: string }> {
  if (obstacle) return { path, why: obstacle.text };
  try {
    const { size } = await fs.stat(file);
    if (size > MOST_BYTES) return { path, why: `It is larger than ${MOST_BYTES / 1024 / 1024} MB.` };
    const bytes = await fs.readFile(file);
    const stored = fileText(bytes);
    return { path, file, kind: kindOf(path)!, bytes, ...stored, text: open ?? stored.text };
  } catch (error) {
    return { path, why: `It cannot be read (${(error as NodeJS.ErrnoException).code}).` };
  }
}
