import fs from 'node:fs/promises';
import type { Unreadable } from '../../shared/picture';
import { isWithin } from '../settings/within';

/** What a path is, found out without opening it. */
export type Look =
  | { kind: 'file' }
  /** `real` is where it truly lies. */
  | { kind: 'folder'; real: string; linked: boolean }
  /** Something of this name that must not be opened, and why. */
  | { kind: 'obstacle'; why: Unreadable };

/** Looks at a path that may be anything. `realRoot`: the book's root with its links resolved. */
export async function look(file: string, realRoot: string): Promise<Look> {
  let linked = false;
  try {
    const self = await fs.lstat(file);
    linked = self.isSymbolicLink();
    const stat = linked ? await fs.stat(file) : self;
    if (linked && !isWithin(realRoot, await fs.realpath(file))) return { kind: 'obstacle', why: LED_OUT };
    if (stat.isFile()) return { kind: 'file' };
    if (stat.isDirectory()) return { kind: 'folder', real: await fs.realpath(file), linked };
    const what = stat.isFIFO()
      ? 'a pipe'
      : stat.isSocket()
        ? 'a socket'
        : stat.isCharacterDevice() || stat.isBlockDevice()
          ? 'a device'
          : 'no file';
    return obstacle(
      'not-a-file',
      `This is ${what}, not a file, and was not opened. Put the picture itself here.`,
    );
  } catch (error) {
    return obstacle(...reason((error as NodeJS.ErrnoException).code, file, linked));
  }
}

/** Of a link that leads out. */
export const LED_OUT: Unreadable = {
  reason: 'outside',
  text: "This is a link that leads out of the book's folder, and was not followed. Copy the picture itself into the folder.",
};

/** Of a link whose end is not there. */
export const LED_NOWHERE: Unreadable = {
  reason: 'missing',
  text: 'This is a link to a file that is not there. Put the picture itself here.',
};

/** Stands for bytes in a name that are no UTF-8: the true name is lost, and nothing can be opened by this one. */
const NO_CHARACTER = '\uFFFD';

function reason(code: string | undefined, file: string, linked: boolean): [Unreadable['reason'], string] {
  switch (code) {
    case 'ENOENT':
      if (!linked && file.includes(NO_CHARACTER))
        return [
          'missing',
          "The file's name holds bytes that are no UTF-8, so it cannot be opened. Rename it.",
        ];
      if (!linked) return ['missing', 'The file is not there any more. Put it back.'];
      return [LED_NOWHERE.reason, LED_NOWHERE.text];
    case 'ELOOP':
      return ['missing', 'This is a link that leads to itself. Put the picture itself here.'];
    case 'EACCES':
    case 'EPERM':
      return ['permission', 'You have no right to read this file. Ask its owner for it.'];
    default:
      return ['corrupt', `The file system does not give it out (${code ?? 'no reason given'}).`];
  }
}

const obstacle = (why: Unreadable['reason'], text: string): Look => ({
  kind: 'obstacle',
  why: { reason: why, text },
});
