import type { Stats } from 'node:fs';
import fs from 'node:fs/promises';
import path from 'node:path';
import { namesPicture } from '../book/discovery/extensions';
import { headOf } from '../book/head';
import { SETTINGS_FILE } from '../book/settings/load';
import { WAIVERS_FILE } from '../book/waivers/file';
import { isOwnPage, kindOf } from '../layout';
import { isChart } from '../report/chart/own';
import { isOwnData, isOwnResult } from '../report/own';
import { named } from './book';
import { Failure } from './failure';
import { isPictureFile } from './picture-file';

/** Whole, or in parts: a report of very many pictures is longer than a text can be. */
export type Text = string | Iterable<string>;

/** Writes to the standard output. What cannot be written is told by `standing-streams.ts`. */
export async function print(text: Text): Promise<void> {
  for (const part of typeof text === 'string' ? [text] : text) {
    const error = await new Promise(resolve => process.stdout.write(part, resolve));
    // nobody reads any more, or there is no room for the rest either
    if (error) return;
  }
}

/**
 * Writes a result to the standard output or to a file: whole or not at all, and never over a picture or settings.
 * @throws Failure where the file must not or cannot be written
 */
export async function writeResult(text: Text, output: string | undefined, standing: Standing): Promise<void> {
  if (output === undefined) return print(text);
  await refuse(output, standing);
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

/** What may stand where a result is to be written. */
export interface Standing {
  /** How the result is written. A chart (`svg`) may be called so, and be written over an older chart. */
  format: string;
  /** Files that the command reads; undefined: one that was not named. */
  reads?: readonly (string | undefined)[];
}

/** They carry no mark by which they could be told from somebody's work. */
const PLAIN = new Set(['text', 'github']);

/**
 * Refuses a file for a result where somebody's work could be lost. Asked before the work begins, too: nobody wants to
 * hear it after. @throws Failure
 */
export async function refuse(output: string, { format, reads = [] }: Standing): Promise<void> {
  const no = (why: string) => new Failure(`"${output}" ${why}. ${INSTEAD}`);
  const stat = await refusePlace(output, format === 'svg');
  if (path.basename(output) === WAIVERS_FILE) throw no('is the name of waivers; no result is written there');
  const same = stat ? await Promise.all(reads.map(file => file !== undefined && isSame(file, stat))) : [];
  if (same.includes(true)) throw no('is read for this result; it is not written over');
  if (kindOf(output) === null && !/\.json$/i.test(output)) return;
  if (PLAIN.has(format))
    throw new Failure(
      `"${output}" is called like a layout or data, and this result is neither. Call it .txt, or ask for another --format.`,
    );
  if (stat?.size && !isOwnResult(await textAt(output)))
    throw no('is there already and is no result of Evengrey; it is not written over');
}

/** Refuses a place where nothing but pictures and settings belongs, or can be kept. Answers what file is there. @throws Failure */
export async function refusePlace(output: string, drawing = false): Promise<Stats | null> {
  named(output);
  const no = (why: string) => new Failure(`"${output}" ${why}. ${INSTEAD}`);
  const mayBeDrawing = drawing && /\.svg$/i.test(output);
  if (namesPicture(path.basename(output)) && !mayBeDrawing)
    throw no('is the name of a picture; no result is written there');
  if (path.basename(output) === SETTINGS_FILE)
    throw no('is the name of settings; no result is written there');
  const stat = await fs.stat(output).catch(() => null);
  if (stat?.isDirectory()) throw no('is a folder');
  // a pipe or a terminal is written to as it is
  if (stat && !stat.isFile()) return null;
  if (stat && (await isPictureFile(output)) && !(mayBeDrawing && isChart(await textAt(output))))
    throw no('holds a picture; it is not written over');
  const folder = path.dirname(output);
  if (!stat && !(await fs.stat(folder).catch(() => null))?.isDirectory())
    throw new Failure(`There is no folder "${folder}" to write "${path.basename(output)}" in.`);
  // a result arrives under another name first
  const may = await fs.access(folder, fs.constants.W_OK).then(
    () => true,
    () => false,
  );
  if (!may)
    throw new Failure(
      `The folder "${folder}" may not be written to, so no result can be kept there. ${INSTEAD}`,
    );
  return stat;
}

/** Takes an older page or data of ours away; leaves whatever else stands there, and what may not be written over. */
export async function discardResult(output: string, standing: Standing): Promise<void> {
  const mayBe = await refuse(output, standing).then(
    () => true,
    () => false,
  );
  const stat = mayBe ? await fs.stat(output).catch(() => null) : null;
  if (!stat?.isFile()) return;
  const head = await textAt(output);
  // a link stays, as it does where a result is written
  if (standing.format === 'html' ? isOwnPage(head) : isOwnData(head)) await fs.rm(await fs.realpath(output));
}

const INSTEAD = 'Name another file for the result.';

const isSame = async (file: string, { dev, ino }: Stats): Promise<boolean> => {
  const other = await fs.stat(file).catch(() => null);
  return other?.dev === dev && other.ino === ino;
};

const textAt = async (file: string): Promise<string> => (await headOf(file)).toString('utf8');
