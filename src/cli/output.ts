// no-unit-test: test/cli/actions/check.test.ts has the built program write over what it must not
import fs from 'node:fs/promises';
import path from 'node:path';
import { namesPicture } from '../book/discovery/extensions';
import { SETTINGS_FILE } from '../book/settings/load';
import { isChart } from '../report/chart/own';
import { named } from './book';
import { Failure } from './failure';
import { isPictureFile } from './picture-file';

/** Whole, or in parts: a report of very many pictures is longer than a text can be. */
export type Text = string | Iterable<string>;

/**
 * Writes a result to the standard output or to a file: whole or not at all, and never over a picture or settings.
 * @throws Failure where the file must not or cannot be written
 */
export async function writeResult(text: Text, output: string | undefined, drawing = false): Promise<void> {
  if (output === undefined) {
    // the callback comes too where nobody reads any more
    for (const part of typeof text === 'string' ? [text] : text)
      await new Promise<void>(resolve => process.stdout.write(part, () => resolve()));
    return;
  }
  await refuse(output, drawing);
  try {
    const stat = await fs.stat(output).catch(() => null);
    // a pipe or a terminal is written to, not replaced
    if (stat && !stat.isFile()) return await fs.writeFile(output, text);
    const file = stat ? await fs.realpath(output) : output;
    const beside = `${file}.${process.pid}.tmp`;
    await fs.writeFile(beside, text);
    await fs.rename(beside, file);
  } catch (error) {
    throw new Failure(`"${output}" cannot be written: ${(error as Error).message}.`);
  }
}

/**
 * Asked before the work begins, too: nobody wants to hear it after. A chart (`drawing`) may be called `.svg`, and be
 * written over an older chart.
 */
export async function refuse(output: string, drawing = false): Promise<void> {
  named(output);
  const instead = 'Name another file for the result.';
  const mayBeDrawing = drawing && /\.svg$/i.test(output);
  if (namesPicture(path.basename(output)) && !mayBeDrawing)
    throw new Failure(`"${output}" is the name of a picture; no result is written there. ${instead}`);
  if (path.basename(output) === SETTINGS_FILE)
    throw new Failure(`"${output}" is the name of settings; no result is written there. ${instead}`);
  const stat = await fs.stat(output).catch(() => null);
  if (stat?.isDirectory()) throw new Failure(`"${output}" is a folder. ${instead}`);
  if (stat?.isFile() && (await isPictureFile(output)) && !(mayBeDrawing && (await isOldChart(output))))
    throw new Failure(`"${output}" holds a picture; it is not written over. ${instead}`);
  const folder = path.dirname(output);
  if (!stat && !(await fs.stat(folder).catch(() => null))?.isDirectory())
    throw new Failure(`There is no folder "${folder}" to write "${path.basename(output)}" in.`);
}

/** A chart of ours begins with our own mark, so that no other drawing is written over. */
async function isOldChart(file: string): Promise<boolean> {
  const handle = await fs.open(file);
  try {
    const head = Buffer.alloc(512);
    const { bytesRead } = await handle.read(head, 0, head.length, 0);
    return isChart(head.subarray(0, bytesRead).toString('latin1'));
  } finally {
    await handle.close();
  }
}
