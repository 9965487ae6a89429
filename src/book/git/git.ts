import { type ChildProcess, type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import os from 'node:os';
import path from 'node:path';

/** Git cannot give what was asked. The message says what to do. */
export class GitError extends Error {
  override name = 'GitError';
}

/** Something that a revision holds is not in this clone, so that nobody here knows what it says. */
export class NotInCloneError extends GitError {
  override name = 'NotInCloneError';
  /** @param path whose content it is; null where not even that is known */
  constructor(path: string | null) {
    const needed = path === null ? 'Something that is needed' : `"${path}" as one of the revisions holds it`;
    super(
      `${needed} is not in this clone, which was made without all contents. Fetch the rest with "git fetch --refetch --no-filter" (in continuous integration: check out without a filter).`,
    );
  }
}

export interface GitAnswer {
  code: number;
  stdout: Buffer;
  stderr: string;
}

/**
 * Said to every git that is started. A repository's own settings can name programs; what is asked here starts none of
 * them: no hooks, no watcher of the file system, no pager. Pathspecs are the letters they are, and no lock is taken that
 * a person's own git could stumble over.
 */
const SAFE = [
  '--no-pager',
  '--no-optional-locks',
  '--literal-pathspecs',
  ...['-c', 'core.fsmonitor=false', '-c', `core.hooksPath=${os.devNull}`],
];

/** Which repository is meant comes from the book's folder alone. What a hook says of its index is `index`'s matter. */
const FOREIGN = [
  'GIT_DIR',
  'GIT_WORK_TREE',
  'GIT_PREFIX',
  'GIT_COMMON_DIR',
  'GIT_INDEX_FILE',
  'GIT_NAMESPACE',
];

/** No network, no questions, no other language: a missing object is told, not fetched. */
function environment(more: Record<string, string>): NodeJS.ProcessEnv {
  const own = Object.entries(process.env).filter(([name]) => !FOREIGN.includes(name.toUpperCase()));
  return {
    ...Object.fromEntries(own),
    GIT_ALLOW_PROTOCOL: 'none',
    GIT_NO_LAZY_FETCH: '1',
    GIT_TERMINAL_PROMPT: '0',
    LC_ALL: 'C',
    ...more,
  };
}

/** Starts git on a folder (absolute) and leaves it running. Never started in the folder itself, which may hold a `git`. */
export function startGit(
  folder: string,
  args: readonly string[],
  env: Record<string, string> = {},
): ChildProcessWithoutNullStreams {
  return started(folder, args, env, 'pipe') as ChildProcessWithoutNullStreams;
}

const started = (
  folder: string,
  args: readonly string[],
  env: Record<string, string> | undefined,
  output: 'pipe' | number,
): ChildProcess =>
  spawn('git', [...SAFE, '-C', folder, ...args], {
    cwd: path.dirname(process.execPath),
    env: environment(env ?? {}),
    stdio: ['pipe', output, 'pipe'],
  });

/** How git is asked. */
interface AskedGit {
  env?: Record<string, string>;
  input?: string;
  /** An open file that its output goes into, which then is no part of the answer. */
  into?: number;
  signal?: AbortSignal;
}

/** Runs git, tells it `input` and waits for its end. @throws GitError where it cannot be started; the signal's reason when cancelled */
export function runGit(folder: string, args: readonly string[], options: AskedGit = {}): Promise<GitAnswer> {
  const { env, input, into = 'pipe', signal } = options;
  return new Promise((resolve, reject) => {
    signal?.throwIfAborted();
    const child = started(folder, args, env, into);
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    const stop = () => child.kill();
    signal?.addEventListener('abort', stop, { once: true });
    child.stdin?.on('error', () => {}); // its end is told by its code
    child.stdin?.end(input);
    child.stdout?.on('data', (chunk: Buffer) => out.push(chunk));
    child.stderr?.on('data', (chunk: Buffer) => err.push(chunk));
    child.on('error', error => reject(notStarted(error)));
    child.on('close', code => {
      signal?.removeEventListener('abort', stop);
      if (signal?.aborted) return reject(signal.reason);
      resolve({
        code: code ?? -1,
        stdout: Buffer.concat(out),
        stderr: Buffer.concat(err).toString('utf8').trim(),
      });
    });
  });
}

/** The same where only success is an answer. @throws GitError with what git says */
export async function askGit(
  folder: string,
  args: readonly string[],
  options: AskedGit = {},
): Promise<Buffer> {
  const { code, stdout, stderr } = await runGit(folder, args, options);
  if (code === 0) return stdout;
  if (saysMissing(stderr)) throw new NotInCloneError(null);
  throw new GitError(`git ${args[0]} failed: ${stderr.replace(/^(fatal|error): /, '') || `code ${code}`}`);
}

/** Whether git complains that it may not fetch what the clone lacks. */
export const saysMissing = (stderr: string): boolean =>
  /could not fetch .+ from promisor remote/.test(stderr);

export function notStarted(error: Error): GitError {
  const missing = (error as NodeJS.ErrnoException).code === 'ENOENT';
  return new GitError(
    missing
      ? 'git is not installed, or not on the PATH: revisions are read with it.'
      : `git could not be started: ${error.message}`,
  );
}

/** The pieces of an answer that git ends with a zero byte each (`-z`). */
export const pieces = (answer: Buffer): string[] => answer.toString('utf8').split('\0').slice(0, -1);
