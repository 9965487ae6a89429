import { count, list } from '../rules/words';
import type { Finding, PictureReport } from '../shared/finding';
import { asksOf } from './sheet/shared';

/** So many pictures are named after a finding about the book: what a service shows of it has an end. */
const NAMED = 20;

/** The pictures that a finding about the book asks to be changed, each file once, by its first page; a note asks for nothing. */
export function askedBy(finding: Finding, pictures: readonly PictureReport[]): PictureReport[] {
  if (finding.severity === 'note') return [];
  const files = new Map<string, PictureReport>();
  for (const picture of pictures)
    if (!files.has(picture.path) && asksOf(finding, picture)) files.set(picture.path, picture);
  return [...files.values()];
}

/**
 * ` This asks for 2 pictures: a.tif and b.tif.`: said where a finding stands apart from those that it is about. Where its own
 * message lists the first of them, the others alone.
 */
export function askedWords({ message }: Finding, asked: readonly PictureReport[]): string {
  const names = asked.map(({ path }) => path);
  const lists = (many: number) => ` ${message}`.includes(` ${list(names, many)}`);
  const told = names.findLastIndex((_, i) => lists(i + 1)) + 1;
  const others = names.slice(told);
  if (!others.length) return '';
  if (!told) return ` This asks for ${count(others.length, 'picture')}: ${list(others, NAMED)}.`;
  return others.length === 1
    ? ` The other picture is ${others[0]}.`
    : ` The other ${others.length} pictures are ${list(others, NAMED)}.`;
}
