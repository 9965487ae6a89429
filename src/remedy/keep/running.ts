import fs from 'node:fs';

/** Whether a process of this number runs on this machine. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/**
 * When a process was started, in the system's own count, which tells it from a later one of the same number; null where
 * the system does not say.
 */
export function startOf(pid: number): string | null {
  try {
    const stat = fs.readFileSync(`/proc/${pid}/stat`, 'latin1');
    // the name, in brackets, can hold spaces and brackets; the start is the 22nd field, the 20th after it (proc(5))
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? null;
  } catch {
    return null;
  }
}
