import { availableParallelism } from 'node:os';
import { UnreadableError } from '../picture/header/unreadable';
import { unreadableFacts } from '../picture/unreadable-facts';
import type { PictureFacts } from '../shared/picture';
import type { Raster, ReaderRequest } from '../shared/reader-protocol';
import { type Answer, ReaderFailure, ReaderProcess } from './reader-process';

/** Reads pictures in child processes, so that a decoder's crash costs one file and never the editor. */
export interface Pool {
  /**
   * All pages of a file; what cannot be read is an entry too, also where the reader crashed or hung on it twice.
   * Rejects with the signal's reason when cancelled, and where no reader can be started at all.
   * @param sha256 the content's hash where it is known, which saves the hashing
   */
  facts(file: string, signal?: AbortSignal, sha256?: string): Promise<PictureFacts[]>;
  /** A picture for showing; goes before waiting facts. Rejects where it cannot be read. */
  raster(file: string, page: number, longEdge: number, signal?: AbortSignal): Promise<Raster>;
  /** Ends all readers; what still waits is rejected. */
  close(): Promise<void>;
}

export interface PoolOptions {
  /** The bundled reader. */
  readerFile: string;
  /** Lanes. Two on two cores are quickest; more only cost memory. */
  size?: number;
  /** Readers that had nothing to do for so long are ended, to give back their memory. */
  idleSeconds?: number;
  /** Multiplies the deadlines: a slow disk or a crowded machine wants more than 1. */
  patience?: number;
}

interface Job {
  request: ReaderRequest;
  resolve(answer: Answer): void;
  reject(why: unknown): void;
  signal?: AbortSignal;
  onAbort(): void;
}

const IDLE_SECONDS = 20;

export function createPool(options: PoolOptions): Pool {
  const lanes = new Lanes(options);
  return {
    async facts(file, signal, sha256) {
      try {
        const answer = await lanes.ask({ id: 0, kind: 'facts', file, sha256 }, signal);
        if (answer.ok && answer.kind === 'facts') return answer.facts;
        return [
          lost('crashed', `The picture could not be judged (${answer.ok ? 'no facts' : answer.message}).`),
        ];
      } catch (error) {
        if (!(error instanceof ReaderFailure)) throw error;
        if (error.kind === 'crashed')
          return [lost('crashed', 'The reader crashed on this picture. It may be damaged: export it again.')];
        if (error.kind === 'timeout')
          return [
            lost('timeout', `Reading was given up: ${error.message}. It may be damaged: export it again.`),
          ];
        throw error;
      }
    },
    async raster(file, page, longEdge, signal) {
      const answer = await lanes.ask({ id: 0, kind: 'raster', file, page, longEdge }, signal);
      if (answer.ok && answer.kind === 'raster') return answer.raster;
      throw new Error(answer.ok ? 'The reader sent no picture.' : answer.message);
    },
    close: () => lanes.close(),
  };
}

function lost(reason: 'crashed' | 'timeout', text: string): PictureFacts {
  return unreadableFacts(new UnreadableError(reason, text), '');
}

/** The queue and the readers that work it off. */
class Lanes {
  readonly #size: number;
  readonly #waiting: Job[] = [];
  readonly #readers = new Set<ReaderProcess>();
  readonly #idle: ReaderProcess[] = [];
  #busy = 0;
  #closed = false;
  /** Readers run on WebAssembly from here on: the native decoder does not load, or crashed before it read anything. */
  #wasm = false;
  #nativeProven = false;
  #idleTimer: NodeJS.Timeout | null = null;

  constructor(readonly options: PoolOptions) {
    this.#size = options.size ?? Math.min(2, availableParallelism());
  }

  ask(request: ReaderRequest, signal?: AbortSignal): Promise<Answer> {
    return new Promise((resolve, reject) => {
      if (this.#closed) return reject(new ReaderFailure('closed', 'The readers were closed.'));
      if (signal?.aborted) return reject(signal.reason);
      const job: Job = {
        request,
        resolve,
        reject,
        signal,
        onAbort: () => {
          const at = this.#waiting.indexOf(job);
          if (at >= 0) this.#waiting.splice(at, 1);
          // one that is being read ends in its own time; nobody waits for it any more
          reject(signal?.reason);
        },
      };
      signal?.addEventListener('abort', job.onAbort, { once: true });
      if (request.kind === 'raster') this.#waiting.unshift(job);
      else this.#waiting.push(job);
      this.#next();
    });
  }

  async close(): Promise<void> {
    this.#closed = true;
    if (this.#idleTimer) clearTimeout(this.#idleTimer);
    for (const job of this.#waiting.splice(0))
      job.reject(new ReaderFailure('closed', 'The readers were closed.'));
    await Promise.all([...this.#readers].map(reader => reader.close()));
  }

  #next(): void {
    while (this.#busy < this.#size && this.#waiting.length > 0) {
      const job = this.#waiting.shift()!;
      this.#busy++;
      this.#work(job)
        .then(job.resolve, job.reject)
        .finally(() => {
          job.signal?.removeEventListener('abort', job.onAbort);
          this.#busy--;
          this.#next();
          this.#watchIdle();
        });
    }
  }

  /** One attempt and one more. A decoder that crashed is not asked again: the second attempt is on WebAssembly. */
  async #work(job: Job): Promise<Answer> {
    try {
      return await this.#attempt(job, this.#wasm);
    } catch (error) {
      if (!(error instanceof ReaderFailure) || error.kind === 'closed' || error.kind === 'not-started')
        throw error;
      if (job.signal?.aborted) throw job.signal.reason;
      const byItself = error.kind === 'crashed' && error.signal !== 'SIGKILL';
      const answer = await this.#attempt(job, this.#wasm || byItself);
      // a native decoder that never answered and crashed on what the other build reads clashes with this program
      if (byItself && !this.#nativeProven) this.#wasm = true;
      return answer;
    }
  }

  async #attempt(job: Job, wasm: boolean): Promise<Answer> {
    const reader = await this.#reader(wasm);
    const answer = await reader.ask(job.request);
    if (!wasm) this.#nativeProven = true;
    this.#idle.push(reader);
    return answer;
  }

  /** An idle reader of the wanted build, or a new one; without a native decoder, WebAssembly. */
  async #reader(wasm: boolean): Promise<ReaderProcess> {
    for (let reader = this.#idle.pop(); reader; reader = this.#idle.pop()) {
      if (reader.alive && reader.wasm === wasm) return reader;
      void reader.close();
    }
    if (this.#closed) throw new ReaderFailure('closed', 'The readers were closed.');
    const reader = new ReaderProcess(this.options.readerFile, wasm, this.options.patience);
    this.#readers.add(reader);
    reader.ended.then(() => this.#readers.delete(reader));
    try {
      await reader.ready;
      return reader;
    } catch (error) {
      if (this.#closed) throw new ReaderFailure('closed', 'The readers were closed.');
      if (wasm) throw error;
      this.#wasm = true;
      return this.#reader(true);
    }
  }

  #watchIdle(): void {
    if (this.#idleTimer) clearTimeout(this.#idleTimer);
    if (this.#busy > 0 || this.#closed) return;
    this.#idleTimer = setTimeout(
      () => {
        for (const reader of this.#idle.splice(0)) void reader.close();
      },
      (this.options.idleSeconds ?? IDLE_SECONDS) * 1000,
    );
    this.#idleTimer.unref();
  }
}
