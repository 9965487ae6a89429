// The two packages that are tested: for this platform, and for every one. Made from the working tree into the folder
// given, where they are not yet there: a build of the tests empties it. As a program it is given that folder.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** Target -> VSIX, absolute. */
export function builtPackages(folder) {
  const find = target => {
    const names = fs.existsSync(folder) ? fs.readdirSync(folder) : [];
    const name = names.find(name => name.startsWith(`evengrey-${target}-`) && name.endsWith('.vsix'));
    return name && path.resolve(folder, name);
  };
  const targets = ['linux-x64', 'universal'];
  const missing = targets.filter(target => !find(target)).flatMap(target => ['--target', target]);
  if (missing.length)
    execFileSync('npm', ['run', '--silent', 'package', '--', ...missing, '--out', path.resolve(folder)], {
      stdio: ['ignore', 'ignore', 'inherit'],
    });
  return Object.fromEntries(targets.map(target => [target, find(target)]));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) builtPackages(process.argv[2]);
