import { count, list } from '../rules/words';
import type { Finding, PictureReport } from '../shared/finding';
import { asksOf, changedBy } from './sheet/shared';

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
  const told = toldIn(message, names);
  const others = names.slice(told);
  if (!others.length) return '';
  if (!told) return ` This asks for ${count(others.length, 'picture')}: ${list(others, NAMED)}.`;
  return others.length === 1
    ? ` The other picture is ${others[0]}.`
    : ` The other ${others.length} pictures are ${list(others, NAMED)}.`;
}

/**
 * The pictures that a finding about the book is about, where its own message does not list all of them; else none, and none
 * for a note that lists none: it asks for nothing.
 */
export function unlisted(finding: Finding): string[] {
  const names = [...changedBy(finding)];
  const told = toldIn(finding.message, names);
  const isWanted = told > 0 || finding.severity !== 'note';
  return isWanted && told < names.length ? names : [];
}

/** So many of the names, from the first on, are listed in a message. */
function toldIn(message: string, names: readonly string[]): number {
  // a book may have a hundred thousand of them, and no message goes on for long
  const other = names.findIndex(name => !message.includes(name));
  const held = other === -1 ? names : names.slice(0, other);
  return held.findLastIndex((_, i) => ` ${message}`.includes(` ${list(names, i + 1)}`)) + 1;
}
