import type { PictureFindings } from '../../shared/comparison';
import type { BookReport, Finding, PictureReport } from '../../shared/finding';

/**
 * What is said of a picture: its own findings, and those about the book that name it. More than a few alike
 * are one finding about the book, so a picture's own can turn into a shared one without anything new in it.
 */
export function claimsOn(picture: PictureReport, book: readonly Finding[]): Finding[] {
  return [...picture.findings, ...book.filter(finding => !isOfBook(finding) && names(finding, picture.path))];
}

/**
 * What speaks against a picture's matching the others: what is said of it, and a finding that no way of storing has the
 * majority, which asks for a change of some pictures and holds of all that it names.
 */
export const matchClaims = (picture: PictureReport, book: readonly Finding[]): Finding[] => [
  ...claimsOn(picture, book),
  ...book.filter(finding => !names(finding, picture.path) && splits(finding, picture.path)),
];

/** Whether it asks others for what this picture has already: no way of storing has the majority, and it is stored as all are to be. */
export const spares = (finding: Finding, path: string): boolean =>
  !isOfBook(finding) && !names(finding, path) && splits(finding, path);

/** Whether it asks most for a change, and this picture as one of them: it is not unlike the others. */
export const asksMost = ({ data: { odd } }: Finding, path: string): boolean =>
  Array.isArray(odd) && !odd.includes(path);

const splits = ({ data: { groups } }: Finding, path: string): boolean =>
  Array.isArray(groups) && groups.some(({ pictures }) => Array.isArray(pictures) && pictures.includes(path));

/** What is waived of what is said of a picture, or with `matchClaims` of what speaks against its matching the others. */
export const waivedOn = (
  picture: PictureReport,
  { waived }: Pick<BookReport, 'waived'>,
  claims = claimsOn,
): Finding[] => claims({ ...picture, findings: picture.waived ?? [] }, waived ?? []);

/** Whether a finding about the book is said of it as a whole, and of no picture by name. */
export const isOfBook = (finding: Finding): boolean => namedIn(finding).length === 0;

const names = (finding: Finding, path: string): boolean => namedIn(finding).includes(path);

/** What is to be changed stands under `convert`, else under `pictures`. */
export function namedIn({ data: { convert, pictures } }: Finding): unknown[] {
  if (Array.isArray(convert)) return convert;
  return Array.isArray(pictures) ? pictures : [];
}

/**
 * Matches findings before and after by rule, target, severity and the picture beside; of several alike each counts once. What is waived since
 * has not ended: it stands, and is told no more.
 */
export function changesOf(
  before: readonly Finding[],
  after: readonly Finding[],
  { waivedSince = [] }: { waivedSince?: readonly Finding[] } = {},
): PictureFindings {
  const left = new Map<string, Finding[]>();
  for (const finding of before) left.set(keyOf(finding), [...(left.get(keyOf(finding)) ?? []), finding]);
  const changes: PictureFindings = { new: [], ended: [], unchanged: [] };
  for (const finding of after) {
    const was = left.get(keyOf(finding))?.shift();
    (was ? changes.unchanged : changes.new).push(finding);
    const advice = was && !changes.advice && otherAdvice(was, finding);
    if (advice) changes.advice = advice;
  }
  for (const finding of waivedSince) left.get(keyOf(finding))?.shift();
  const ended = new Set([...left.values()].flat());
  changes.ended = before.filter(finding => ended.has(finding));
  return changes;
}

/** What a finding asks to save a picture as, where it asked for another; a target that is only called otherwise makes none. */
function otherAdvice(was: Finding, is: Finding): PictureFindings['advice'] {
  const [before, after] = [was, is].map(({ data }) => (typeof data.save === 'string' ? data.save : null));
  const unnamed = (save: string) => save.replace(/ for target "[^"]*"/g, '');
  if (before === null || after === null || unnamed(before) === unnamed(after)) return undefined;
  return { target: typeof is.data.target === 'string' ? is.data.target : null, before, after };
}

/** A difference to the picture beside it is another one beside another. */
const keyOf = ({ rule, severity, data }: Finding): string =>
  JSON.stringify([
    rule,
    severity,
    ...[data.target, data.beside].map(name => (typeof name === 'string' ? name : null)),
  ]);
