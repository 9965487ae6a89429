// no-unit-test: part of the tests
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { noSettings, type Settings } from '../../src/book/settings/settings';
import { convertPictures } from '../../src/remedy/batch';
import type { Converters } from '../../src/remedy/converters';
import type { Converting } from '../../src/remedy/settled';
import { type Undoing, undoConversions } from '../../src/remedy/undo';
import type { PictureFacts } from '../../src/shared/picture';
import type { RemedyResult } from '../../src/shared/remedy';
import { greyFacts } from '../book/support/facts';
import { temporaryFolder } from '../book/support/folder';
import { wishFor } from './support';

export const sha = (bytes: string | Buffer) => createHash('sha256').update(bytes).digest('hex');

/**
 * What stands in for pixels: a picture's text says what it is (`colour 1`), a result's what it was made from
 * (`rgb-neutral of HASH`), as a record does.
 */
export function factsOf(file: string): PictureFacts[] {
  const text = fs.readFileSync(file, 'utf8');
  const [encoding, of, from] = text.split(' ');
  const format = file.endsWith('.png') ? 'png' : file.endsWith('.tif') ? 'tiff' : 'jpeg';
  const remedied = of === 'of' ? { from, to: encoding as 'rgb-neutral', toned: false, fitted: false } : null;
  return [greyFacts(sha(text), { encoding: encoding as PictureFacts['encoding'], format, remedied })];
}

/** A converter of such pictures; `before` sees each task before it is done. */
export function fakeConverters(before: (task: { file: string; temporary: string }) => void = () => {}) {
  const tasks: string[] = [];
  const converters: Converters & { tasks: string[]; closed: boolean } = {
    tasks,
    closed: false,
    async convert({ file, temporary, wish }): Promise<RemedyResult> {
      tasks.push(path.basename(file));
      before({ file, temporary });
      const source = fs.readFileSync(file);
      const made = `${wish.to} of ${sha(source)}`;
      fs.writeFileSync(temporary, made);
      return {
        from: sha(source),
        fromEncoding: 'colour',
        format: 'jpeg',
        bits: 8,
        width: 1,
        height: 1,
        proof: { encoding: wish.to, maxError: 0, meanError: 0, sha256: sha(made), bytes: made.length },
        moved: null,
        told: [],
      };
    },
    async close() {
      converters.closed = true;
    },
  };
  return converters;
}

export const book = (files: Record<string, string>) => temporaryFolder(files);

/** Every visible file of a folder and what it holds. */
export function contents(folder: string): Record<string, string> {
  const files: Record<string, string> = {};
  for (const name of fs.readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()) {
    const file = path.join(folder, name);
    if (!name.startsWith('.') && fs.lstatSync(file).isFile()) files[name] = fs.readFileSync(file, 'utf8');
  }
  return files;
}

/** All of the book is meant to be grey. */
export const allGrey: Settings = {
  ...noSettings,
  intents: [{ intent: 'grey', pictures: ['**'], reference: null }],
};

/** Converts the whole book to `rgb-neutral` beside the pictures, unless `how` says otherwise. */
export function run(root: string, how: Partial<Converting> = {}) {
  const paths = how.paths ?? [root];
  return convertPictures({
    ...{
      root,
      paths,
      settings: allGrey,
      cache: null,
      place: { kind: 'beside' },
      dryRun: false,
      relink: false,
      meant: 'named',
    },
    pool: { facts: async file => factsOf(file) },
    // with a quality named a JPEG becomes one
    wish: wishFor({ quality: 90 }),
    converters: fakeConverters(),
    memory: path.join(root, '.memory'),
    ...how,
  });
}

export const undo = (root: string, how: Partial<Undoing> = {}) =>
  undoConversions({
    ...{ root, paths: [root], settings: noSettings, dryRun: false },
    ...how,
  });

/** `path: outcome` of each. */
export const outcomes = (all: readonly { path: string; outcome: string }[]) =>
  Object.fromEntries(all.map(({ path: at, outcome }) => [at, outcome]));
