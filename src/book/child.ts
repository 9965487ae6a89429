// no-unit-test: test/book/pool.test.ts drives it through every way to die
import { type ChildProcess, fork } from 'node:child_process';
import type { ChildAnswer, ChildReply } from '../shared/child-protocol';

/** Why a child gave no answer. */
export class ChildFailure extends Error {
  constructor(
    readonly kind: 'not-started' | 'crashed' | 'timeout' | 'closed',
    message: string,
    /** Signal that ended the process, where one did. */
    readonly signal: NodeJS.Signals | null = null,
  ) {
    super(message);
    this.name = 'ChildFailure';
  }
}

/** Loading the decoder takes some tenths of a second, on a cold network disk some seconds. */
const START_SECONDS = 30;
/** Generous: what takes longer hangs. WebAssembly is about five times slower. */
const BASE_SECONDS = 4;
const SECONDS_PER_MEGAPIXEL = 0.3;
const SECONDS_PER_MEGABYTE = 0.1;
const WASM_FACTOR = 5;
/** However large a hostile header says it is. */
const MOST_SECONDS = 1800;

const KEPT_COMPLAINT = 2000;

/** How a child is started. */
export interface ChildOptions {
  /** The bundled program. */
  file: string;
  /** What it is, for messages: `picture reader`. */
  name: string;
  /** Multiplies every deadline, or that of a task. */
  patience?: number | ((task: object) => number);
}

/** One child process that works on pictures, one at a time. */
export class Child<Task extends object, Done extends object> {
  readonly #child: ChildProcess;
  /** Settles when the process has ended, for whatever reason. */
  readonly ended: Promise<void>;
  readonly #ready: Promise<void>;
  /** What it worked on last, of which it may hold more than it told. */
  lastFile: string | undefined;
  #alive = true;
  #patience = 1;
  #complaint = '';
  #closing = false;
  #pending: { id: number; settle(answer: ChildAnswer<Done>): void; fail(why: ChildFailure): void } | null =
    null;
  #deadline: NodeJS.Timeout | null = null;
  #nextId = 1;

  constructor(
    readonly options: ChildOptions,
    readonly wasm: boolean,
  ) {
    this.#child = fork(options.file, wasm ? ['--wasm'] : [], {
      serialization: 'advanced',
      // the parent may be Electron or under a debugger: the child is neither
      execArgv: [],
      env: { ...process.env, ELECTRON_RUN_AS_NODE: '1', NODE_OPTIONS: '' },
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    });
    this.#child.stderr?.on('data', (text: Buffer) => {
      this.#complaint = (this.#complaint + text.toString()).slice(-KEPT_COMPLAINT);
    });
    this.ended = new Promise(resolve => {
      const end = (signal: NodeJS.Signals | null) => {
        this.#alive = false;
        this.#fail(this.#closing ? closed() : crashed(signal));
        resolve();
      };
      this.#child.once('exit', (_code, signal) => end(signal));
      this.#child.once('error', () => end(null));
    });
    this.#ready = this.#start();
    this.#child.on('message', (message: ChildReply<Done>) => this.#receive(message));
  }

  /** Settles once the decoder is loaded; rejects with `not-started` where it never does. */
  get ready(): Promise<void> {
    return this.#ready;
  }

  get alive(): boolean {
    return this.#alive;
  }

  /** @throws ChildFailure `crashed`, `timeout`, `closed` */
  ask(task: Task): Promise<ChildAnswer<Done>> {
    return new Promise((settle, fail) => {
      if (!this.#alive) return fail(crashed(null));
      this.#hold();
      const id = this.#nextId++;
      this.#pending = { id, settle, fail };
      this.lastFile = fileOf(task);
      const { patience = 1 } = this.options;
      this.#patience = typeof patience === 'number' ? patience : patience(task);
      this.#setDeadline(0, 0);
      // a failed send is followed by the process's end, which settles the promise
      this.#child.send({ ...task, id }, () => {});
    });
  }

  /** Ends the process and waits for that. */
  async close(): Promise<void> {
    this.#closing = true;
    if (!this.#alive) return;
    // an idle child holds nothing alive: without this the parent could end before it hears of the child's end
    this.#hold();
    this.#child.kill('SIGKILL');
    await this.ended;
  }

  async #start(): Promise<void> {
    let timer: NodeJS.Timeout | undefined;
    const loaded = new Promise<boolean>(resolve => {
      const listen = (message: ChildReply<Done>) => {
        if ('kind' in message && message.kind === 'ready') resolve(true);
      };
      this.#child.on('message', listen);
      timer = setTimeout(() => resolve(false), START_SECONDS * 1000);
      this.ended.then(() => resolve(false));
    });
    const started = await loaded;
    clearTimeout(timer);
    if (started) return this.#release();
    await this.close();
    throw new ChildFailure(
      'not-started',
      `The ${this.options.name} could not be started. ${this.#complaint.trim()}`.trim(),
    );
  }

  #receive(message: ChildReply<Done>): void {
    if (!this.#pending || !('id' in message) || message.id !== this.#pending.id) return;
    if ('ok' in message) {
      const { settle } = this.#pending;
      this.#release();
      settle(message);
    } else this.#setDeadline(message.megabytes, message.megapixels);
  }

  #setDeadline(megabytes: number, megapixels: number): void {
    if (this.#deadline) clearTimeout(this.#deadline);
    const byHeader = BASE_SECONDS + megabytes * SECONDS_PER_MEGABYTE + megapixels * SECONDS_PER_MEGAPIXEL;
    const seconds = Math.min(MOST_SECONDS, byHeader * (this.wasm ? WASM_FACTOR : 1) * this.#patience);
    const asked = this.#pending;
    this.#deadline = setTimeout(() => {
      // a busy parent comes late to its timers: an answer that already waits is taken first
      setImmediate(() => {
        if (this.#pending !== asked) return;
        this.#fail(new ChildFailure('timeout', `no answer within ${Number(seconds.toPrecision(2))} seconds`));
        this.#child.kill('SIGKILL');
      });
    }, seconds * 1000);
  }

  #fail(why: ChildFailure): void {
    const fail = this.#pending?.fail;
    this.#release();
    fail?.(why);
  }

  /** Keeps the parent alive while an answer is due. */
  #hold(): void {
    this.#child.ref();
    this.#child.channel?.ref();
  }

  /** An idle child does not. One whose end is waited for does, also where it gets ready in that moment. */
  #release(): void {
    if (this.#deadline) clearTimeout(this.#deadline);
    this.#deadline = null;
    this.#pending = null;
    if (this.#closing) return;
    this.#child.unref();
    this.#child.channel?.unref();
    (this.#child.stderr as unknown as { unref?(): void } | null)?.unref?.();
  }
}

/** What file a task is about, where it is about one. */
export const fileOf = (task: object): string | undefined => (task as { file?: string }).file;

function crashed(signal: NodeJS.Signals | null): ChildFailure {
  return new ChildFailure('crashed', `the process ended${signal ? ` by ${signal}` : ''}`, signal);
}

export function closed(): ChildFailure {
  return new ChildFailure('closed', 'The child processes were closed.');
}
