// no-unit-test: test/book/pool.test.ts drives it through every way to die
import { availableParallelism } from 'node:os';
import type { ChildAnswer } from '../shared/child-protocol';
import { Child, ChildFailure, type ChildOptions, closed, fileOf } from './child';

export interface ChildrenOptions extends ChildOptions {
  /** How many work at a time. Two on two cores are quickest; more only cost memory. */
  size?: number;
  /** Children that had nothing to do for so long are ended, to give back their memory. */
  idleSeconds?: number;
  /** A fresh one takes the place of those that are ended, so that the next task does not wait for its start. */
  spare?: boolean;
  /** What a child that stands by does meanwhile, so that it is quicker at its first task. */
  rehearsal?: object;
  /** Told of a child that ended or hung on a task, which is then given to another. */
  onLost?: (task: object, why: ChildFailure) => void;
}

interface Job<Task, Done> {
  task: Task;
  resolve(answer: ChildAnswer<Done>): void;
  reject(why: unknown): void;
  signal?: AbortSignal;
  onAbort(): void;
}

const IDLE_SECONDS = 20;

/** The queue and the child processes that work it off. */
export class Children<Task extends object, Done extends object> {
  readonly #size: number;
  readonly #waiting: Job<Task, Done>[] = [];
  readonly #children = new Set<Child<Task, Done>>();
  readonly #idle: Child<Task, Done>[] = [];
  /** Started before there was work, and never at any. Each promise settles when its child can take some. */
  readonly #standingBy = new Map<Child<Task, Done>, Promise<void>>();
  #busy = 0;
  #closed = false;
  /** Children run on WebAssembly from here on: the native decoder does not load, or crashed before it read anything. */
  #wasm = false;
  #nativeProven = false;
  #idleTimer: NodeJS.Timeout | null = null;

  constructor(readonly options: ChildrenOptions) {
    this.#size = options.size ?? Math.min(2, availableParallelism());
  }

  /**
   * Rejects with a ChildFailure where a task got no answer twice, or with the signal's reason when cancelled.
   * @param first goes before what waits
   */
  ask(task: Task, signal?: AbortSignal, first = false): Promise<ChildAnswer<Done>> {
    return new Promise((resolve, reject) => {
      if (this.#closed) return reject(closed());
      if (signal?.aborted) return reject(signal.reason);
      const job: Job<Task, Done> = {
        task,
        resolve,
        reject,
        signal,
        onAbort: () => {
          const at = this.#waiting.indexOf(job);
          if (at >= 0) this.#waiting.splice(at, 1);
          // one that is worked on ends in its own time; nobody waits for it any more
          reject(signal?.reason);
        },
      };
      signal?.addEventListener('abort', job.onAbort, { once: true });
      if (first) this.#waiting.unshift(job);
      else this.#waiting.push(job);
      this.#next();
    });
  }

  /** Has so many children ready for work that is to come, at most as many as work at a time. */
  warm(count: number): void {
    const ready = [...this.#idle, ...this.#standingBy.keys()].filter(child =>
      this.#serves(child, this.#wasm),
    );
    const missing = Math.min(count, this.#size) - this.#busy - ready.length;
    for (let n = 0; n < missing && !this.#closed; n++) this.#standBy();
  }

  #standBy(): void {
    const child = this.#begin(this.#wasm);
    const prepared = this.#prepare(child);
    this.#standingBy.set(child, prepared);
    prepared.then(
      () => this.#watchIdle(),
      // whoever has work starts one anew, and is told what is wrong
      () => this.#standingBy.delete(child),
    );
  }

  /** One that is wanted before it is ready goes to work at once. */
  async #prepare(child: Child<Task, Done>): Promise<void> {
    await child.ready;
    const { rehearsal } = this.options;
    // one that ends over it is no worse than none
    if (rehearsal && this.#standingBy.has(child)) await child.ask(rehearsal as Task).catch(() => {});
  }

  async close(): Promise<void> {
    this.#closed = true;
    if (this.#idleTimer) clearTimeout(this.#idleTimer);
    for (const job of this.#waiting.splice(0)) job.reject(closed());
    await Promise.all([...this.#children].map(child => child.close()));
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
  async #work(job: Job<Task, Done>): Promise<ChildAnswer<Done>> {
    try {
      return await this.#attempt(job, this.#wasm);
    } catch (error) {
      if (!(error instanceof ChildFailure) || error.kind === 'closed' || error.kind === 'not-started')
        throw error;
      if (job.signal?.aborted) throw job.signal.reason;
      this.options.onLost?.(job.task, error);
      const byItself = error.kind === 'crashed' && error.signal !== 'SIGKILL';
      const answer = await this.#attempt(job, this.#wasm || byItself);
      // a native decoder that never answered and crashed on what the other build reads clashes with this program
      if (byItself && !this.#nativeProven) this.#wasm = true;
      return answer;
    }
  }

  async #attempt(job: Job<Task, Done>, wasm: boolean): Promise<ChildAnswer<Done>> {
    const child = await this.#free(wasm, fileOf(job.task));
    const answer = await child.ask(job.task);
    if (!wasm) this.#nativeProven = true;
    this.#idle.push(child);
    return answer;
  }

  /**
   * An idle child of the wanted build, or a new one; without a native decoder, WebAssembly.
   * @param file the one that worked on it last, if it is idle
   */
  async #free(wasm: boolean, file?: string): Promise<Child<Task, Done>> {
    const last = this.#idle.findIndex(child => child.lastFile === file);
    if (file !== undefined && last >= 0) this.#idle.push(...this.#idle.splice(last, 1));
    for (let child = this.#idle.pop(); child; child = this.#idle.pop()) {
      if (this.#serves(child, wasm)) return child;
      void child.close();
    }
    if (this.#closed) throw closed();
    const [child, prepared] = this.#takeStandingBy(wasm) ?? this.#started(wasm);
    try {
      await prepared;
      return child.alive ? child : this.#free(wasm, file);
    } catch (error) {
      if (this.#closed) throw closed();
      if (wasm) throw error;
      this.#wasm = true;
      return this.#free(true, file);
    }
  }

  #serves = (child: Child<Task, Done>, wasm: boolean) => child.alive && child.wasm === wasm;

  #takeStandingBy(wasm: boolean): [Child<Task, Done>, Promise<void>] | undefined {
    const found = [...this.#standingBy].find(([child]) => this.#serves(child, wasm));
    if (found) this.#standingBy.delete(found[0]);
    return found;
  }

  #started(wasm: boolean): [Child<Task, Done>, Promise<void>] {
    const child = this.#begin(wasm);
    return [child, child.ready];
  }

  #begin(wasm: boolean): Child<Task, Done> {
    const child = new Child<Task, Done>(this.options, wasm);
    this.#children.add(child);
    child.ended.then(() => {
      this.#children.delete(child);
      this.#standingBy.delete(child);
    });
    return child;
  }

  #watchIdle(): void {
    if (this.#idleTimer) clearTimeout(this.#idleTimer);
    if (this.#busy > 0 || this.#closed) return;
    this.#idleTimer = setTimeout(() => this.#rest(), (this.options.idleSeconds ?? IDLE_SECONDS) * 1000);
    this.#idleTimer.unref();
  }

  /** What has worked has filled its memory: it ends. Where a spare one is wanted, one that stands by stays. */
  #rest(): void {
    const spare = this.options.spare ? 1 : 0;
    const standing = [...this.#standingBy.keys()].filter(child => this.#serves(child, this.#wasm));
    const kept = new Set(standing.slice(0, spare));
    for (const child of [...this.#idle.splice(0), ...this.#standingBy.keys()]) {
      if (kept.has(child)) continue;
      this.#standingBy.delete(child);
      void child.close();
    }
    this.warm(spare);
  }
}
