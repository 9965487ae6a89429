import type { Comparison } from '../../shared/comparison';

/** A part of a text that is a name of a file, or words between such. */
export interface Piece {
  text: string;
  isName: boolean;
}

/** Takes a text apart at the names in it, so that each format can mark them. */
export type Apart = (text: string) => Piece[];

/**
 * By every file that a comparison speaks of: the longest name that stands by itself counts, wherever one is part of another.
 * What stands in quotation marks is marked already.
 */
export function apartAtNames(comparison: Comparison): Apart {
  const names = namesOf(comparison);
  if (!names.length) return text => [{ text, isName: false }];
  const any = names.map(literally).join('|');
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}_/."-])(${any})(?![\\p{L}\\p{N}_/-]|\\.[\\p{L}\\p{N}])`, 'u');
  return text =>
    text
      .split(pattern)
      .map((piece, at) => ({ text: piece, isName: at % 2 === 1 }))
      .filter(piece => piece.text !== '');
}

/** As a pattern of the `u` flag takes it, which allows no other escapes than of what has a meaning (ECMA-262, SyntaxCharacter). */
const literally = (name: string): string => name.replace(/[\^$\\.*+?()[\]{}|]/g, '\\$&');

/** A name without a dot or a folder could be any word of a sentence. */
const NO_WORD = /[./]/;

/** The longest first. */
function namesOf({
  base,
  head,
  changes,
  others,
  advice,
  rearranged,
  waived,
  unlooked,
}: Comparison): string[] {
  const all = [
    ...changes.flatMap(({ path, from, neighbours: { before, after, beside }, faced }) => [
      ...[path, from, before, after],
      ...[...beside, ...faced],
    ]),
    ...others.map(({ path }) => path),
    ...advice.flatMap(({ pictures }) => pictures),
    ...rearranged.flatMap(({ path, before, after }) => [
      path,
      ...[before, after].flatMap(stand => [stand.after, stand.layout, ...stand.facing]),
    ]),
    ...waived.map(({ path }) => path),
    ...(unlooked ? [...unlooked.pictures, ...unlooked.never, ...unlooked.texts.map(({ path }) => path)] : []),
    ...[...base.findings, ...head.findings, ...waived.map(({ finding }) => finding)].flatMap(({ data }) =>
      named(data),
    ),
  ];
  return [...new Set(all.flatMap(name => (name !== null && NO_WORD.test(name) ? name : [])))].sort(
    (x, y) => y.length - x.length || (x < y ? -1 : 1),
  );
}

/** Whom a finding about the book names, wherever it does. */
const named = ({ pictures, convert, odd, groups }: Record<string, unknown>): string[] =>
  [pictures, convert, odd, ...(Array.isArray(groups) ? groups.map(group => group?.pictures) : [])]
    .flatMap(some => (Array.isArray(some) ? some : []))
    .filter(name => typeof name === 'string');
