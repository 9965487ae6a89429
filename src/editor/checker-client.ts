import { type ChildProcess, fork } from 'node:child_process';
import type {
  CheckerAnswers,
  CheckerMessage,
  CheckerRequest,
  Progress,
  Question,
} from '../shared/checker-protocol';

export interface AskOptions {
  signal?: AbortSignal;
  onProgress?(progress: Progress): void;
}

interface Pending {
  request: Exclude<CheckerRequest, { question: 'cancel' }>;
  options: AskOptions;
  settle(message: Extract<CheckerMessage, { ok: boolean }>): void;
  /** Asked again once of a new process after the first one died. */
  again: boolean;
}

/** What was asked is not wanted any more. */
export class Cancelled extends Error {}

/** Without a book, so long as somebody is likely to open another page of a picture. */
const QUARTER_OF_AN_HOUR = 15 * 60_000;

/** Does something later, unless it is called off by what is returned. */
export type Later = (ms: number, work: () => void) => () => void;

const byTimer: Later = (ms, work) => {
  const timer = setTimeout(work, ms).unref();
  return () => clearTimeout(timer);
};

/**
 * The checker process: started when first asked, it stays as long as a book keeps it, however long that rests, and
 * without one is let go when nobody has asked for a while. Every promise settles: with the answer, with the checker's
 * own words, as `Cancelled`, or saying that the process ended twice.
 */
export class CheckerClient {
  #child: ChildProcess | undefined;
  #pending = new Map<number, Pending>();
  #nextId = 1;
  /** Calls off the letting go that is due; nothing where none is. */
  #stay: (() => void) | undefined;
  #keepers = 0;
  #disposed = false;

  /** `program`: the bundled checker. `log`: takes what the process writes to its standard error. */
  constructor(
    private readonly program: string,
    private readonly log: (line: string) => void,
    private readonly later = byTimer,
  ) {}

  ask<Q extends Question>(
    question: Q,
    request: CheckerAnswers[Q]['request'],
    options: AskOptions = {},
  ): Promise<CheckerAnswers[Q]['answer']> {
    return new Promise((resolve, reject) => {
      if (this.#disposed || options.signal?.aborted) return reject(new Cancelled());
      const id = this.#nextId++;
      const settle: Pending['settle'] = message => {
        this.#pending.delete(id);
        options.signal?.removeEventListener('abort', cancel);
        if (this.#pending.size === 0) this.#rest();
        if (message.ok) resolve(message.answer as CheckerAnswers[Q]['answer']);
        else reject(message.cancelled ? new Cancelled() : new Error(message.message));
      };
      const cancel = () => {
        this.#child?.send({ id, question: 'cancel' } satisfies CheckerRequest, () => {});
        settle({ id, ok: false, message: '', cancelled: true });
      };
      options.signal?.addEventListener('abort', cancel);
      const pending: Pending = {
        request: { id, question, ...request } as Pending['request'],
        options,
        settle,
        again: false,
      };
      this.#pending.set(id, pending);
      this.#send(pending);
    });
  }

  /** Has the process stay while it has nothing to do: what is asked next is answered without its start. Starts none. */
  keep(): { dispose(): void } {
    this.#keepers++;
    this.#stay?.();
    return {
      dispose: () => {
        this.#keepers--;
        if (this.#pending.size === 0) this.#rest();
      },
    };
  }

  dispose() {
    this.#disposed = true;
    for (const [id, { settle }] of this.#pending) settle({ id, ok: false, message: '', cancelled: true });
    this.#letGo();
  }

  #send({ request }: Pending) {
    this.#stay?.();
    this.#child ??= this.#start();
    // a process that is gone is told by its exit
    this.#child.send(request, () => {});
  }

  #start(): ChildProcess {
    const child = fork(this.program, {
      serialization: 'advanced',
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
      execArgv: [],
      // on a desktop the extension host is an Electron, which has to be told to be a node
      env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' },
    });
    child.stderr?.setEncoding('utf8').on('data', this.log);
    child.on('message', (message: CheckerMessage) => this.#receive(message));
    child.once('error', error => this.#ended(child, error.message));
    child.once('exit', (code, signal) => this.#ended(child, String(signal ?? `exit code ${code}`)));
    return child;
  }

  #receive(message: CheckerMessage) {
    const pending = this.#pending.get(message.id);
    if (!pending) return;
    if ('progress' in message) pending.options.onProgress?.(message.progress);
    else pending.settle(message);
  }

  #ended(child: ChildProcess, how: string) {
    if (this.#child !== child) return;
    this.#child = undefined;
    this.log(`the checker ended: ${how}\n`);
    for (const [id, pending] of [...this.#pending]) {
      if (pending.again)
        pending.settle({ id, ok: false, cancelled: false, message: `the checking process ended (${how})` });
      else {
        pending.again = true;
        this.#send(pending);
      }
    }
  }

  #rest() {
    this.#stay?.();
    if (this.#keepers === 0) this.#stay = this.later(QUARTER_OF_AN_HOUR, () => this.#letGo());
  }

  #letGo() {
    this.#stay?.();
    const child = this.#child;
    this.#child = undefined;
    // without its parent's channel it ends by itself, its readers too
    if (child?.connected) child.disconnect();
  }
}
