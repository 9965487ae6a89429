// no-unit-test: test/book/book-files.test.ts checks books with such lines
import { kindOf, takes, toolOf } from '../../layout';
import type { PlacedAt, Refusal } from '../../shared/finding';

/** What a line (`at`) that places a picture (relative to the root) has its layout's usual tool say; null: it takes it. */
export function refusalOf(at: PlacedAt, picture: string): Refusal | null {
  const kind = kindOf(at.file);
  if (kind === null || takes(kind, picture)) return null;
  const { shows, stops, alone } = toolOf(kind);
  return { ...at, tool: shows, outcome: stops ? 'stops' : 'blank', sure: alone };
}
