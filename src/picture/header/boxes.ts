// no-unit-test: heif.test.ts reads every kind of box through it
import { Numbers, type Source } from './source';
import { UnreadableError } from './unreadable';

/** One box of an ISO base media file (ISO/IEC 14496-12, section 4.2). */
export interface Box {
  type: string;
  /** Where the content begins, after the box's own header. */
  start: number;
  end: number;
}

const MOST_BOXES = 10_000;

/** Boxes between two offsets, in order. A box that leaves its parent ends the list. */
export function boxesIn(source: Source, start: number, end: number): Box[] {
  const n = new Numbers(source, true);
  const boxes: Box[] = [];
  for (let at = start; at + 8 <= end; ) {
    let size = n.u32(at);
    let head = 8;
    if (size === 1) {
      size = n.u64(at + 8);
      head = 16;
    }
    if (size === 0) size = end - at; // to the end
    if (size < head || at + size > end) break;
    boxes.push({ type: n.text(at + 4, 4), start: at + head, end: at + size });
    if (boxes.length > MOST_BOXES)
      throw new UnreadableError('corrupt', 'The file holds an implausible number of boxes.');
    at += size;
  }
  return boxes;
}
