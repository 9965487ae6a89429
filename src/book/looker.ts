// no-unit-test: test/picture/reader.test.ts asks a built reader what it asks; test/e2e/suites/screen goes through it
import type { Detail, Marks, PixelReading, SeenBox } from '../shared/look';
import type { ReaderDone, ReaderTask } from '../shared/reader-protocol';
import { Children } from './children';

/** A page of a file; from 1. */
interface PageOf {
  file: string;
  page: number;
}

/**
 * Looks closely at one picture after the other. By a reader of its own, which keeps the values of the page that it read
 * last: a pointer that moves asks many times a second, and does not wait behind the pictures of a book.
 */
export interface Looker {
  detail(wish: PageOf & { box: SeenBox; longEdge: number }, signal?: AbortSignal): Promise<Detail>;
  pixel(wish: PageOf & { x: number; y: number }, signal?: AbortSignal): Promise<PixelReading>;
  marks(wish: PageOf & { longEdge: number }, signal?: AbortSignal): Promise<Marks>;
  close(): Promise<void>;
}

/** Nobody looks any more: its memory is given back. */
const IDLE_SECONDS = 60;

/** Its promises reject with an error whose message is for the user. */
export function createLooker(readerFile: string): Looker {
  const readers = new Children<ReaderTask, ReaderDone>({
    ...{ file: readerFile, name: 'picture reader', size: 1, idleSeconds: IDLE_SECONDS },
  });
  async function ask<K extends 'detail' | 'pixel' | 'marks'>(
    task: ReaderTask & { kind: K },
    signal: AbortSignal | undefined,
  ): Promise<ReaderDone & { kind: K }> {
    const answer = await readers.ask(task, signal, true);
    if (answer.ok && answer.kind === task.kind) return answer as typeof answer & { kind: K };
    throw new Error(answer.ok ? 'The reader sent something else.' : answer.message);
  }
  return {
    detail: async (wish, signal) => (await ask({ kind: 'detail', ...wish }, signal)).detail,
    pixel: async (wish, signal) => (await ask({ kind: 'pixel', ...wish }, signal)).pixel,
    marks: async (wish, signal) => (await ask({ kind: 'marks', ...wish }, signal)).marks,
    close: () => readers.close(),
  };
}
