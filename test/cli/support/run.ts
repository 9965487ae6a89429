import { type ChildProcess, spawn } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { temporaryFolder } from '../../book/support/folder';

/** The program as it is built; `EVENGREY_DIST` names another folder than `dist`. */
export const dist = path.resolve(process.env.EVENGREY_DIST ?? 'dist');

export interface Ran {
  code: number | null;
  stdout: string;
  stderr: string;
}

export interface RunOptions {
  cwd?: string;
  env?: Record<string, string>;
  program?: string;
  /** Sees the process while it runs. */
  during?: (child: ChildProcess) => void;
}

/** Runs the built command line with a cache of its own, without colour and without a terminal. */
export function evengrey(args: readonly string[], options: RunOptions = {}): Promise<Ran> {
  const { cwd = process.cwd(), program = path.join(dist, 'cli.js') } = options;
  const child = spawn(process.execPath, [program, ...args], {
    cwd,
    env: {
      PATH: process.env.PATH,
      HOME: temporaryFolder(),
      EVENGREY_CACHE_DIR: temporaryFolder(),
      ...options.env,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const out: Buffer[] = [];
  const err: Buffer[] = [];
  child.stdout.on('data', chunk => out.push(chunk));
  child.stderr.on('data', chunk => err.push(chunk));
  options.during?.(child);
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', code =>
      resolve({ code, stdout: Buffer.concat(out).toString(), stderr: Buffer.concat(err).toString() }),
    );
  });
}

/** A copy of the built program beside a reader of the test's own. `reader` may use `real`, the built reader's path. */
export const withReader = (reader: string): string => withChild('reader', reader);

/** The same with a converter of the test's own, and the built reader. */
export const withConverter = (converter: string): string => withChild('converter', converter);

function withChild(name: 'reader' | 'converter', script: string): string {
  const folder = temporaryFolder();
  fs.copyFileSync(path.join(dist, 'cli.js'), path.join(folder, 'cli.js'));
  for (const each of ['reader', 'converter']) {
    const real = JSON.stringify(path.join(dist, `${each}.js`));
    const text = each === name ? script : 'require(real);';
    fs.writeFileSync(path.join(folder, `${each}.js`), `const real = ${real};\n${text}`);
  }
  return path.join(folder, 'cli.js');
}
