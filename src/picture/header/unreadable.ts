// no-unit-test: a class without behaviour; every parser's test throws it
import type { Format, Space, Unreadable } from '../../shared/picture';

/** Why a picture cannot be judged: thrown by headers and decoder, turned into an `unreadable` picture by `read`. */
export class UnreadableError extends Error {
  /** Which page of the file, from 1. */
  page = 1;
  /** Pixels, where the header says them; else 0 x 0. */
  readonly size: { width: number; height: number };

  /** What the header says besides, of a format that is known but not read. */
  stored: { channels: number; bits: number; space: Space | null } | null = null;

  constructor(
    readonly reason: Unreadable['reason'],
    readonly text: string,
    /** What the file is, where that is known. */
    readonly format: Format = 'unknown',
    { width, height }: { width: number; height: number } = { width: 0, height: 0 },
  ) {
    super(text);
    this.name = 'UnreadableError';
    this.size = { width, height };
  }
}
