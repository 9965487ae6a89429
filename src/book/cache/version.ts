import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';

/**
 * What facts were made by: the bundled reader, byte for byte, and the decoder's release. No number to be forgotten
 * when the reader changes.
 */
export async function factsVersion(readerFile: string): Promise<string> {
  const hash = createHash('sha256').update(await fs.readFile(readerFile));
  return hash.update(await decoderRelease(readerFile)).digest('hex');
}

async function decoderRelease(readerFile: string): Promise<string> {
  try {
    const entry = createRequire(readerFile).resolve('sharp');
    const home = entry.slice(0, entry.lastIndexOf(`${path.sep}sharp${path.sep}`) + '/sharp/'.length);
    return JSON.parse(await fs.readFile(path.join(home, 'package.json'), 'utf8')).version;
  } catch {
    return ''; // only the WebAssembly build is there, or none
  }
}
