import type { Finding, PictureReport, Severity } from '../../shared/finding';
import { changedBy } from '../sheet/shared';
import { rank } from '../told';

/** Findings of one rule and one severity: what a person would put right in one go. */
export interface Block {
  rule: string;
  severity: Severity;
  /** About the whole book. */
  book: Finding[];
  /** One entry a message, with all pictures that it is said of, and the share (0-1) of each where the rule tells one. */
  entries: { message: string; pictures: string[]; shares: number[] }[];
  /** How many pictures are concerned. */
  count: number;
}

/** A picture as a person calls it: by its path, and by its page where the file has several. */
export const nameOf = (path: string, page: number) => (page > 1 ? `${path} (page ${page})` : path);

/** What messages have in common that differ only in their figures and in what they quote. */
export const patternOf = (message: string): string =>
  message.replace(/"[^"]*"/g, '""').replace(/\d+(?:\.\d+)?/g, '0');

/** Findings with the pictures that they are about: of a whole report, or of a part of it. */
export interface Told {
  pictures: readonly (Pick<PictureReport, 'path' | 'findings'> & {
    facts: Pick<PictureReport['facts'], 'page'>;
  })[];
  findings: readonly Finding[];
}

/** The findings of a report by rule: worst first, then what concerns most pictures. */
export function blocksOf(report: Told): Block[] {
  const blocks = new Map<string, Block>();
  const blockOf = ({ rule, severity }: Finding): Block => {
    const key = `${severity} ${rule}`;
    const block = blocks.get(key) ?? { rule, severity, book: [], entries: [], count: 0 };
    blocks.set(key, block);
    return block;
  };
  for (const finding of report.findings) blockOf(finding).book.push(finding);
  for (const { path, facts, findings } of report.pictures)
    for (const finding of findings) {
      const block = blockOf(finding);
      const name = nameOf(path, facts.page);
      const same = block.entries.find(entry => entry.message === finding.message);
      const entry = same ?? { message: finding.message, pictures: [], shares: [] };
      if (!same) block.entries.push(entry);
      entry.pictures.push(name);
      if (typeof finding.data.share === 'number') entry.shares.push(finding.data.share);
    }
  for (const block of blocks.values()) {
    // a note for the book asks nothing of a picture, and says itself how many it is about
    const named = block.severity === 'note' ? [] : block.book.map(changedBy);
    const together = report.pictures.filter(({ path }) => named.some(paths => paths.has(path)));
    block.count = new Set([
      ...block.entries.flatMap(entry => entry.pictures),
      ...together.map(({ path, facts }) => nameOf(path, facts.page)),
    ]).size;
  }
  return [...blocks.values()].sort(
    (x, y) =>
      rank[x.severity] - rank[y.severity] ||
      y.count + y.book.length - (x.count + x.book.length) ||
      (x.rule < y.rule ? -1 : 1),
  );
}

/** The sentences that all messages begin with, to be said once; '' where there is one message or none in common. */
export function sharedSentences([first, ...others]: readonly string[]): string {
  if (!others.length) return '';
  let shared = '';
  for (const [end] of first.matchAll(/.*?[.!?] (?=\S)/g)) {
    const longer = shared + end;
    if (!others.every(other => other.startsWith(longer) && other.length > longer.length)) break;
    shared = longer;
  }
  return shared;
}
