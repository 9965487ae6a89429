import type { PrintRecord } from '../../shared/target';
import type { Paper } from '../papers';

/** One delivery of the house's paper against the next (own choice). */
const SPREAD = { a: 0.3, b: 0.6 };

/** The paper as it was read from the house's prints; the user's own measurement goes first. */
export function readPaper(paper: Paper, record: PrintRecord | null | undefined): Paper {
  if (!record?.paper || paper.id === 'measured') return paper;
  return {
    ...paper,
    white: record.paper,
    spread: SPREAD,
    ground: `read from the house's prints, ${record.date}`,
  };
}
