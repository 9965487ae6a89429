// Installs the VS Code that the editor suite runs in: code-server 4.100.3 (VS Code 1.100.3, the newest whose engines
// accept Node 20), by the lock file beside this page, into the user's cache folder. No install script runs: they
// would download from other hosts. Its native modules are optional (terminal, file logs), so they are left unbuilt.
// TypeScript, which the packages of its own extensions leave to such a script, is what its HTML language server runs by.
// The folder must lie OUTSIDE the project: below an extension under development, the server's built-in themes are
// taken for that extension's own.
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const here = path.dirname(fileURLToPath(import.meta.url));
const run = promisify(execFile);
const quiet = ['--ignore-scripts', '--no-audit', '--no-fund', '--omit-lockfile-registry-resolved'];

/** Folder with `out/server-main.js`; installs it on the first call. Throws with npm's own words when it cannot. */
export async function installServer() {
  const lock = await fs.readFile(path.join(here, 'package-lock.json'));
  const version = createHash('sha256').update(lock).digest('hex').slice(0, 12);
  const cache = process.env.XDG_CACHE_HOME || path.join(os.homedir(), '.cache');
  const home = path.join(cache, 'evengrey-test', `vscode-server-${version}`);
  const code = path.join(home, 'node_modules/code-server/lib/vscode');
  if (await exists(path.join(home, 'ready'))) return code;

  // built beside its final place and moved there whole: two runs at once, or a killed one, leave nothing half done
  await fs.mkdir(path.dirname(home), { recursive: true });
  const building = await fs.mkdtemp(`${home}-`);
  try {
    for (const file of ['package.json', 'package-lock.json', '.npmrc'])
      await fs.copyFile(path.join(here, file), path.join(building, file));
    await npm(building, ['ci', ...quiet]);
    const inner = path.join(building, 'node_modules/code-server/lib/vscode');
    // its own lock file lacks a peer, which a plain `npm ci` refuses
    await npm(inner, ['ci', '--omit=dev', '--legacy-peer-deps', ...quiet]);
    await fs.symlink('node_modules', path.join(inner, 'node_modules.asar'));
    // VS Code starts ripgrep from this path; its own install script would download it
    const ripgrep = path.join(inner, 'node_modules/@vscode/ripgrep/bin');
    await fs.mkdir(ripgrep, { recursive: true });
    await fs.copyFile(
      path.join(building, 'node_modules/@vscode/ripgrep-linux-x64/bin/rg'),
      path.join(ripgrep, 'rg'),
    );
    await fs.writeFile(path.join(building, 'ready'), '');
    await fs.rename(building, home).catch(async error => {
      if (!(await exists(path.join(home, 'ready')))) throw error;
    });
  } finally {
    await fs.rm(building, { recursive: true, force: true });
  }
  return code;
}

async function npm(cwd, args) {
  try {
    await run('npm', args, { cwd, maxBuffer: 1e8 });
  } catch (error) {
    throw new Error(`npm ${args.join(' ')} failed in ${cwd}:\n${error.stderr || error.message}`);
  }
}

const exists = file =>
  fs.access(file).then(
    () => true,
    () => false,
  );
