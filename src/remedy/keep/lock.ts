import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { RemedyError } from '../remedy-error';
import { isRunning, startOf } from './running';
import { withTemporary } from './temporary';

/** Who holds, or held, the right to change a book's pictures. */
interface Claim {
  pid: number;
  host: string;
  /** When the process was started, as the system counts it. */
  start: string | null;
}

const CLAIM = /^running-.*\.json$/;
const PAUSE_MS = 50;

/** What this very process holds. */
const held = new Set<string>();

/**
 * Lets one run at a time change the pictures of a book. Everyone first writes a claim of their own and then looks for
 * those of others: two can so step back both, but never go on both. Claims of processes that are gone are removed.
 * @param folder the keep's folder, which is there
 * @param patience how long another run is waited for, in ms
 * @returns what gives the right back
 * @throws RemedyError where another run holds it
 */
export async function lock(folder: string, patience = 2000): Promise<() => Promise<void>> {
  const own = path.join(folder, `running-${os.hostname().replace(/[^\w-]/g, '_')}-${process.pid}.json`);
  const until = performance.now() + patience;
  for (;;) {
    const other = await claimOnce(own, folder);
    if (!other) break;
    if (performance.now() >= until) throw new RemedyError(busy(other.file, other.claim));
    // of two that stepped back one comes first
    await pause(PAUSE_MS * (0.5 + Math.random()));
  }
  return async () => {
    await fs.rm(own, { force: true });
    held.delete(own);
  };
}

interface Other {
  file: string;
  claim: Claim | null;
}

/** Null: the right is ours. Else who has it. */
async function claimOnce(own: string, folder: string): Promise<Other | null> {
  if (held.has(own)) return { file: own, claim: claimOfThis() };
  held.add(own);
  const other = await claim(own, folder).catch(error => {
    held.delete(own);
    throw error;
  });
  if (other) held.delete(own);
  return other;
}

/** The same against other processes; our claim is withdrawn where there is another. */
async function claim(own: string, folder: string): Promise<Other | null> {
  // whole at once: half a claim would be nobody's
  await withTemporary(own, async temporary => {
    await fs.writeFile(temporary, JSON.stringify(claimOfThis()));
    await fs.rename(temporary, own);
  });
  for (const name of (await fs.readdir(folder)).filter(name => CLAIM.test(name))) {
    const file = path.join(folder, name);
    if (file === own) continue;
    const other = await read(file);
    if (other === 'gone') continue;
    if (other && isDead(other)) await fs.rm(file, { force: true });
    else {
      await fs.rm(own, { force: true });
      return { file, claim: other };
    }
  }
  return null;
}

const claimOfThis = (): Claim => ({ pid: process.pid, host: os.hostname(), start: startOf(process.pid) });

/** Null: it is none of ours. */
async function read(file: string): Promise<Claim | 'gone' | null> {
  try {
    const { pid, host, start } = JSON.parse(await fs.readFile(file, 'utf8'));
    return Number.isSafeInteger(pid) && pid > 0 && typeof host === 'string' ? { pid, host, start } : null;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'gone' : null;
  }
}

function isDead({ pid, host, start }: Claim): boolean {
  if (host !== os.hostname()) return false; // nobody can tell from here
  if (!isRunning(pid)) return true;
  const now = startOf(pid);
  return start !== null && now !== null && now !== start;
}

function busy(file: string, claim: Claim | null): string {
  if (claim?.host === os.hostname())
    return `Another run of evengrey is changing pictures of this book (process ${claim.pid}). Nothing was changed by this one: wait until that has ended, and start again.`;
  const where = claim ? ` on the machine "${claim.host}"` : '';
  return `Another run of evengrey seems to be changing pictures of this book${where}. Nothing was changed by this one. If that is not so, delete "${file}" and start again.`;
}
