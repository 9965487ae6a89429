// no-unit-test: part of the tests
import { buffer } from 'node:stream/consumers';
import yauzl from 'yauzl';

/** Every file of a VSIX by its name inside. */
export async function filesOf(vsix: string): Promise<Map<string, Buffer>> {
  const files = new Map<string, Buffer>();
  const zip = await yauzl.openPromise(vsix);
  for await (const entry of zip.eachEntry())
    files.set(entry.fileName, await buffer(await zip.openReadStreamPromise(entry)));
  return files;
}
