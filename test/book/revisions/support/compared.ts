import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { FactsCache } from '../../../../src/book/cache/cache';
import { checkBook } from '../../../../src/book/check';
import { type CompareOptions, compareRevisions } from '../../../../src/book/comparison/compare';
import { loadSettings } from '../../../../src/book/settings/load';
import { UnreadableError } from '../../../../src/picture/header/unreadable';
import { unreadableFacts } from '../../../../src/picture/unreadable-facts';
import type { Comparison } from '../../../../src/shared/comparison';
import type { PictureFacts } from '../../../../src/shared/picture';
import type { Content, Shown } from '../../../../src/shared/reader-protocol';
import { bytesOf } from '../../support/content';
import { greyFacts } from '../../support/facts';
import { temporaryFolder } from '../../support/folder';
import { git, repositoryOf } from './repository';

/** The text of a picture says how it stores its grey: `black-only 1`, `rgb-neutral 7`; of `broken 1` nothing can be read. */
export function pool() {
  const read: string[] = [];
  const facts = (content: string): PictureFacts[] => {
    read.push(content);
    return [factsIn(content, createHash('sha256').update(content).digest('hex'))];
  };
  const looked: string[] = [];
  return {
    ...{ read, looked },
    facts: async (file: string) => facts(fs.readFileSync(file, 'utf8')),
    async factsOf(content: Content) {
      const bytes = bytesOf(content);
      return bytes && facts(bytes.toString('utf8'));
    },
    /** What stands behind a `#` is no pixel. */
    async pixels(content: Shown) {
      looked.push(content.called ?? content.file);
      return [bytesOf(content)!.toString('utf8').split('#')[0]];
    },
  };
}

function factsIn(content: string, sha256: string): PictureFacts {
  if (content.startsWith('version https://git-lfs'))
    return unreadableFacts(new UnreadableError('not-fetched', 'A pointer.', 'lfs-pointer'), sha256);
  if (content.startsWith('broken'))
    return unreadableFacts(new UnreadableError('truncated', 'It is cut off.'), sha256);
  const neutral = greyFacts(sha256);
  if (!content.startsWith('black-only')) return neutral;
  const [zone] = neutral.zones;
  const inks = { weight: 1, mean: [0, 0, 0, 0.5], covariance: new Array(16).fill(0) };
  return {
    ...neutral,
    encoding: 'black-only',
    space: 'cmyk',
    channels: 4,
    zones: [{ ...zone, clusters: [inks] }],
  };
}

/** Longer than any large-file pointer, as pictures are. */
export const picture = (encoding: string, seed: number | string) => `${encoding} ${seed} ${'.'.repeat(1100)}`;
export const neutral = (seed: number | string) => picture('rgb-neutral', seed);

export const book = (count: number) =>
  Object.fromEntries(
    Array.from({ length: count }, (_, i) => [`plates/${String(i + 1).padStart(3, '0')}.tif`, neutral(i)]),
  );
export const settings = { 'evengrey.json': '{ "process": "offset-coated" }' };

export async function compared(
  root: string,
  change: Partial<CompareOptions> = {},
): Promise<Comparison & { read: string[] }> {
  const reader = pool();
  const comparison = await compareRevisions({
    ...{ root, base: 'HEAD~1', head: null, fromMergeBase: true, conditions: {}, whole: false },
    ...{ pool: reader, cache: null },
    ...change,
  });
  return { ...comparison, read: reader.read };
}

/** What stands for a picture that was not fetched. */
export const pointer = (digit: string) =>
  `version https://git-lfs.github.com/spec/v1\noid sha256:${digit.repeat(64)}\nsize 12345\n`;

/** A book of five, and `more`, that lie there long enough for their stamps to be trusted, to be checked whole or in part. */
export function checkedBook(more: Record<string, string> = {}) {
  const pictures = { ...book(5), ...more };
  const top = repositoryOf({ ...settings, ...pictures });
  const past = new Date(Date.now() - 60_000);
  for (const name of Object.keys(pictures)) fs.utimesSync(path.join(top, name), past, past);
  git(top, 'update-index', '--refresh');
  const checked = async (names: string[] = ['.']) => {
    await new Promise(resolve => setTimeout(resolve, 150));
    const cache = await FactsCache.open(temporaryFolder(), top, 'v');
    const { settings: read } = await loadSettings(top);
    const paths = names.map(name => path.join(top, name));
    await checkBook({ root: top, paths, settings: read!, pool: pool(), cache });
    return cache;
  };
  return { top, checked };
}

export const rulesOf = (comparison: Comparison, which: 'new' | 'ended' | 'unchanged') =>
  comparison.changes.flatMap(({ path, pages }) =>
    pages.flatMap(({ findings }) => findings[which].map(({ rule }) => `${path} ${rule}`)),
  );
