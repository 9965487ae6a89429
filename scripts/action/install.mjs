// Installs what the build needs, as the lock file says, and none of the packages that test and lint: on a runner that
// begins with nothing these would take most of the time. Changes no file of the repository.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { leanManifest } from './packages.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
// beside node_modules, which is moved
const folder = fs.mkdtempSync(path.join(root, '.install-'));
const read = name => JSON.parse(fs.readFileSync(path.join(root, name), 'utf8'));
const write = (name, content) => fs.writeFileSync(path.join(folder, name), JSON.stringify(content));
try {
  write('package.json', leanManifest(read('package.json')));
  const lock = read('package-lock.json');
  write('package-lock.json', {
    ...lock,
    packages: { ...lock.packages, '': leanManifest(lock.packages['']) },
  });
  const npmrc = path.join(root, '.npmrc');
  if (fs.existsSync(npmrc)) fs.copyFileSync(npmrc, path.join(folder, '.npmrc'));
  execFileSync('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund'], {
    cwd: folder,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  fs.rmSync(path.join(root, 'node_modules'), { recursive: true, force: true });
  fs.renameSync(path.join(folder, 'node_modules'), path.join(root, 'node_modules'));
} finally {
  fs.rmSync(folder, { recursive: true, force: true });
}
