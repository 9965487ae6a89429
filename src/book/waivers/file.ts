import fs from 'node:fs/promises';
import path from 'node:path';
import type { Problem } from '../settings/problem';
import { parseAgainst } from '../settings/validate';
import { disk, type SettingsFiles } from '../settings/within';
import type { Waiver } from './key';

export const WAIVERS_FILE = '.evengrey-waivers.json';
const MOST_BYTES = 16 * 1024 * 1024;

export interface WaiversRead {
  waivers: Waiver[];
  /** Relative to the book's folder, as it is shown; null where there is none. */
  file: string | null;
  /** What is wrong with it: then nothing is waived. */
  problems: Problem[];
}

/**
 * The waivers of the book at `root`, or those in a file that a person named (absolute). A file that is not there holds
 * none.
 */
export async function readWaivers(
  root: string,
  { named, source = disk }: { named?: string; source?: SettingsFiles } = {},
): Promise<WaiversRead> {
  const file = named ?? path.join(root, WAIVERS_FILE);
  const shown = path.relative(root, file).split(path.sep).join('/');
  const found = await source.within(
    named ? path.parse(file).root : root,
    path.dirname(file),
    path.basename(file),
  );
  if (!found.ok && found.why === 'missing') return { waivers: [], file: null, problems: [] };
  const trouble = (message: string): WaiversRead => ({
    waivers: [],
    file: shown,
    problems: [{ file: shown, offset: 0, length: 1, line: 1, column: 1, message, suggestion: null }],
  });
  if (!found.ok) return trouble(found.message);
  let text: string;
  try {
    text = Buffer.from(await source.bytes(file, MOST_BYTES)).toString('utf8');
  } catch (error) {
    return trouble(`This file cannot be read: ${(error as Error).message}.`);
  }
  const { value, problems } = parseAgainst('waivers', text, shown);
  return problems.length
    ? { waivers: [], file: shown, problems }
    : { waivers: structuredClone((value as { waivers: Waiver[] }).waivers), file: shown, problems: [] };
}

/** Writes waivers, whole or not at all, each key on a line of its own: a review sees what was added. */
export async function writeWaivers(file: string, waivers: readonly Waiver[]): Promise<void> {
  const beside = `${file}.${process.pid}.tmp`;
  await fs.writeFile(beside, `${JSON.stringify({ waivers }, null, 2)}\n`);
  await fs.rename(beside, file);
}
