import { modify } from 'jsonc-parser';
import type { PictureReport } from '../../shared/finding';
import type { JudgedBook } from '../judge-book';
import { type Waiver, waiverOf } from './key';

/** A stretch of a text, in characters, and what is to stand there. */
export interface TextChange {
  offset: number;
  length: number;
  content: string;
}

/**
 * The waivers of a rule's findings on a picture, on all its pages. Notes need none: they are only for knowing.
 * @throws Error in words for people where there is no such finding, or none that can be waived
 */
export function waiversFor(rule: string, path: string, reason: string, book: JudgedBook): Waiver[] {
  const pages = book.pictures.filter(picture => picture.path === path);
  const found = pages.flatMap((picture: PictureReport) =>
    picture.findings
      .filter(finding => finding.rule === rule && finding.severity !== 'note')
      .map(finding => waiverOf(finding, picture, book)),
  );
  if (!found.length)
    throw new Error(`There is nothing to waive: no warning and no error "${rule}" stands on ${path}.`);
  if (found.includes(null)) throw new Error(`What was not read cannot be waived: ${path}.`);
  return found.map(waiver => ({ ...waiver!, reason }));
}

/**
 * What makes a file of waivers have more of them, after those that are there, whose values, order and comments stay.
 * @param text the file as it is, sound; null: there is none
 */
export function changesAdding(text: string | null, waivers: readonly Waiver[]): TextChange[] {
  if (text === null) return [{ offset: 0, length: 0, content: `${JSON.stringify({ waivers }, null, 2)}\n` }];
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const formattingOptions = { insertSpaces: true, tabSize: 2, eol };
  let changed = text;
  for (const waiver of waivers) {
    const edits = modify(changed, ['waivers', -1], waiver, { isArrayInsertion: true, formattingOptions });
    for (const { offset, length, content } of edits.toSorted((x, y) => y.offset - x.offset))
      changed = changed.slice(0, offset) + content + changed.slice(offset + length);
  }
  return [between(text, changed)];
}

/** The one stretch in which two texts differ. */
function between(before: string, after: string): TextChange {
  let start = 0;
  while (start < before.length && before[start] === after[start]) start++;
  let end = 0;
  const most = Math.min(before.length, after.length) - start;
  while (end < most && before[before.length - 1 - end] === after[after.length - 1 - end]) end++;
  return {
    offset: start,
    length: before.length - end - start,
    content: after.slice(start, after.length - end),
  };
}
