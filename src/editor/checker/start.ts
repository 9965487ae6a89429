import fs from 'node:fs/promises';
import path from 'node:path';
import type { FactsCache } from '../../book/cache/cache';
import { Children } from '../../book/children';
import { bookFolder } from '../../book/first-settings/folder';
import { firstSettings } from '../../book/first-settings/text';
import { SETTINGS_FILE } from '../../book/settings/load';
import type { CheckerAnswers } from '../../shared/checker-protocol';
import type { DemoDone, DemoTask } from '../../shared/demo-protocol';

/** Writes a book's first settings; false: there are some already, which stay as they are. */
export async function writeFirst(
  { root, answers }: CheckerAnswers['writeFirst']['request'],
  cache: FactsCache | null,
  signal: AbortSignal,
): Promise<boolean> {
  const text = firstSettings(answers, await bookFolder(root, cache, signal));
  signal.throwIfAborted();
  try {
    await fs.writeFile(path.join(root, SETTINGS_FILE), text, { flag: 'wx' });
    return true;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST') return false;
    throw new Error(`${SETTINGS_FILE} cannot be written into this folder (${code}).`);
  }
}

/**
 * Draws the demo book in a process of its own. Given up, what is drawn by then stays.
 * @param demoFile the bundled program
 * @throws with words for the user where the folder holds something or cannot be written
 */
export async function makeDemo(folder: string, demoFile: string, signal?: AbortSignal): Promise<null> {
  const makers = new Children<DemoTask, DemoDone>({ file: demoFile, name: 'demo book', size: 1 });
  try {
    const answer = await makers.ask({ folder }, signal);
    if (!answer.ok) throw new Error(`The demo book cannot be written: ${answer.message}`);
    if (answer.refused) throw new Error(answer.refused);
    return null;
  } finally {
    await makers.close();
  }
}
