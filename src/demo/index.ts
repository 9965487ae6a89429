// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import fs from 'node:fs/promises';
import path from 'node:path';
import sharp from 'sharp';
import { type Master, master, scenes } from './masters';
import { demoPictures } from './pictures';
import { layout, readme, settings } from './texts';

const WIDTH = 1440;

/** The folder cannot be used: what is wrong and what to do. */
export class DemoError extends Error {}

/**
 * Makes the invented book in a folder that is new or empty; nothing is ever overwritten.
 * @param onProgress told after every picture
 * @returns paths of the pictures, relative to the folder
 * @throws DemoError where the folder holds something or is no folder
 */
export async function makeDemo(
  folder: string,
  onProgress: (done: number, of: number) => void = () => {},
): Promise<string[]> {
  await mustBeFree(folder);
  sharp.cache(false);
  await fs.mkdir(folder, { recursive: true });
  await write(folder, 'evengrey.json', settings);
  await write(folder, 'book.md', layout);
  await write(folder, 'README.md', readme);
  let done = 0;
  for (const scene of scenes) {
    // drawn once, stored in many ways
    let drawn: Master | null = null;
    for (const picture of demoPictures) {
      if (picture.scene !== scene) continue;
      drawn ??= master(scene, WIDTH);
      const stored = picture.store(drawn);
      const bytes = Buffer.isBuffer(stored) ? stored : await stored.toBuffer();
      await write(folder, picture.file, picture.spoil ? picture.spoil(bytes) : bytes);
      onProgress(++done, demoPictures.length);
    }
  }
  return demoPictures.map(({ file }) => file);
}

async function mustBeFree(folder: string): Promise<void> {
  let there: string[];
  try {
    there = await fs.readdir(folder);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return;
    if (code === 'ENOTDIR')
      throw new DemoError(`"${folder}" is a file. Name a folder that is not there yet.`);
    throw new DemoError(`"${folder}" cannot be used (${code}). Name a folder that is not there yet.`);
  }
  if (there.length)
    throw new DemoError(
      `"${folder}" is not empty, and the demo overwrites nothing. Name a folder that is not there yet, or delete this one.`,
    );
}

async function write(folder: string, file: string, content: string | Uint8Array): Promise<void> {
  const target = path.join(folder, file);
  await fs.mkdir(path.dirname(target), { recursive: true });
  await fs.writeFile(target, content, { flag: 'wx' });
}
