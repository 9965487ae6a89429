// no-unit-test: test/cli/actions/candidates.test.ts runs the built program
import path from 'node:path';
import { createConverters } from '../../remedy/converters';
import { greyMethods } from '../../remedy/grey/methods';
import { RemedyError } from '../../remedy/remedy-error';
import { methodsPage } from '../../report/page/methods-page';
import type { MethodPictures } from '../../shared/remedies';
import { named } from '../book';
import { EXIT, Failure } from '../failure';
import { interruptible } from '../interrupt';
import { refuse, writeResult } from '../output';
import type { ConvertVerbOptions } from '../verbs/convert';

/** Pixels of the longest edge: large enough to judge tones by. */
const LONG_EDGE = 700;

/** Writes a page that shows one picture made grey in every way. The picture is only read. @throws RemedyError, Failure */
export async function candidates(names: readonly string[], options: ConvertVerbOptions): Promise<number> {
  const { candidates: page, to = 'rgb-neutral', format, jobs: _, ...others } = options;
  if (page === undefined) throw new Failure('--candidates: name the page to write.');
  const [other] = Object.keys(others);
  if (other || format !== 'text')
    throw new Failure(
      `--candidates goes with --to alone: leave --${dashed(other ?? 'format')} out. Nothing is converted by it.`,
    );
  if (names.length !== 1) throw new Failure('--candidates shows one picture: name one.');
  if (!/\.html?$/i.test(page)) throw new Failure(`--candidates: "${page}" is to be a page: call it .html.`);
  const standing = { format: 'html' };
  await refuse(page, standing);
  const [picture] = names;
  const converters = createConverters({ converterFile: path.join(__dirname, 'converter.js'), size: 1 });
  try {
    const methods = greyMethods.map(({ id, method }) => ({ id, method }));
    const task = { file: named(picture), methods, longEdge: LONG_EDGE };
    const pictures = await interruptible(signal => converters.methods(task, signal), 'Stopped.').catch(
      error => {
        throw error instanceof RemedyError
          ? new Failure(`--candidates: "${picture}": ${error.message}`)
          : error;
      },
    );
    const command = (method: string) => `evengrey convert ${quoted(picture)} --to ${to} --method ${method}`;
    await writeResult(methodsPage(path.basename(picture), greyMethods, pictures, command), page, standing);
    process.stdout.write(`${writtenWords(picture, page, pictures)}\n`);
    return EXIT.clean;
  } finally {
    await converters.close();
  }
}

/** What was written, and what to do with it. */
function writtenWords(picture: string, page: string, { grey }: MethodPictures): string {
  const alike = new Set(grey.map(({ png }) => Buffer.from(png).toString('base64'))).size === 1;
  return [
    `"${page}" is written: "${picture}" made grey in ${grey.length} ways. Open it in a browser. Nothing was converted.`,
    ...(alike ? ['The picture is grey already, so the ways can only be alike.'] : []),
  ].join('\n');
}

/** As a shell takes it for one word. */
const quoted = (word: string) => (/^[\w./-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`);

const dashed = (key: string) => key.replace(/[A-Z]/g, letter => `-${letter.toLowerCase()}`);
