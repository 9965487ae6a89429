// The Debian packages that the suites use: the one list is test/apt-packages.txt.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';

const wanted = fs
  .readFileSync(new URL('../apt-packages.txt', import.meta.url), 'utf8')
  .split('\n')
  .map(line => line.replace(/#.*/, '').trim())
  .filter(Boolean);

/** Installs what is missing where this process may. Returns what is missing still, by name. */
export function ensurePackages() {
  let missing = missingPackages();
  const root = process.getuid?.() === 0;
  if (missing.length && root && found('apt-get')) {
    console.log(`installing ${missing.join(', ')}`);
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    const apt = args => spawnSync('apt-get', args, { env, stdio: ['ignore', 'ignore', 'inherit'] });
    apt(['update', '-q']);
    apt(['install', '-q', '-y', '--no-install-recommends', ...missing]);
    missing = missingPackages();
  }
  return missing;
}

/** What a person is told who has to install them. */
export const installHint = missing =>
  `missing: ${missing.join(', ')} (as root: apt-get update && apt-get install -y ${missing.join(' ')})`;

function missingPackages() {
  // elsewhere than on Debian nobody can tell; the suite that lacks a program says so itself
  if (!found('dpkg-query')) return [];
  return wanted.filter(name => {
    const { stdout } = spawnSync('dpkg-query', ['-W', '-f', `$\{db:Status-Status}`, name], {
      encoding: 'utf8',
    });
    return stdout !== 'installed';
  });
}

function found(program) {
  return process.env.PATH.split(':').some(dir => fs.existsSync(`${dir}/${program}`));
}
