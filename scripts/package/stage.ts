import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { listFiles } from '@vscode/vsce';
import { bundledPackages, type Metafile } from './bundled';
import { readNotices } from './data';
import { thirdPartyNotices } from './notices';
import { type Package, packagesOf, readPackage } from './packages';
import { platformOf, UNIVERSAL } from './targets';

/** What goes into the package as it stands in the repository; .vscodeignore has the last word. */
const AS_IT_IS = ['CHANGELOG.md', 'LICENSE', '.vscodeignore', 'media', 'l10n', 'package.nls.json'];
const NOTICES = 'ThirdPartyNotices.txt';
/** The lesser licence and the one that it builds on. */
const LESSER = ['LGPL-3.0.txt', 'GPL-3.0.txt'];
const LICENCES = 'scripts/package/licences';
/** A native decoder, as npm lays it down. */
const NATIVE = /^node_modules\/@img\/sharp-(?!wasm32).*\.node$/;

/**
 * A folder of its own with everything that is packaged for a target: nothing of a developer's own folders gets in, and
 * packages are those of the lock file. The caller removes it.
 * @throws Error where the build or npm fails, or the target's decoder is not there
 */
export async function stage(root: string, target: string): Promise<{ folder: string; version: string }> {
  const platform = platformOf(target);
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-package-'));
  try {
    for (const name of ['package.json', 'package-lock.json', '.npmrc'])
      fs.copyFileSync(path.join(root, name), path.join(folder, name));
    npm(folder, [
      'ci',
      '--omit=dev',
      '--ignore-scripts',
      ...Object.entries(platform).map(([k, v]) => `--${k}=${v}`),
    ]);
    fs.rmSync(path.join(folder, 'package-lock.json'));

    for (const name of AS_IT_IS)
      if (fs.existsSync(path.join(root, name)))
        fs.cpSync(path.join(root, name), path.join(folder, name), { recursive: true });
    fs.copyFileSync(path.join(root, 'src/editor/README.md'), path.join(folder, 'README.md'));
    const manifest = shippedManifest(path.join(folder, 'package.json'));
    const metafile = build(root, path.join(folder, 'dist'));

    const files = (await listFiles({ cwd: folder })).map(file => file.split(path.sep).join('/'));
    if (files.some(file => NATIVE.test(file)) !== (target !== UNIVERSAL))
      throw new Error(
        `The decoder's files are not those of ${target}: ${files.filter(f => f.includes('@img')).join(', ')}`,
      );
    const notices = thirdPartyNotices({
      title: `${manifest.displayName} ${manifest.version} (${target})`,
      bundled: bundledPackages(metafile).map(dir => withInside(root, readPackage(root, dir))),
      separate: packagesOf(files).map(dir => readPackage(folder, dir)),
      data: readNotices(path.join(root, 'src')),
      lesserTexts: LESSER.map(file => fs.readFileSync(path.join(root, LICENCES, file), 'utf8')),
    });
    fs.writeFileSync(path.join(folder, NOTICES), notices);
    return { folder, version: manifest.version };
  } catch (error) {
    fs.rmSync(folder, { recursive: true });
    throw error;
  }
}

/** With the terms that a package does not bring along: its own, or those of what is compiled into it. */
function withInside(root: string, part: Package): Package {
  const file = path.join(root, LICENCES, `${part.name}.txt`);
  return fs.existsSync(file)
    ? { ...part, texts: [...part.texts, fs.readFileSync(file, 'utf8').trim()] }
    : part;
}

/** Takes from the manifest what concerns developers alone. */
function shippedManifest(file: string): { displayName: string; version: string } {
  const {
    scripts,
    devDependencies,
    repository,
    private: _,
    ...shipped
  } = JSON.parse(fs.readFileSync(file, 'utf8'));
  fs.writeFileSync(file, `${JSON.stringify(shipped, null, 2)}\n`);
  return shipped;
}

function build(root: string, dist: string): Metafile {
  const file = `${dist}.meta.json`;
  execFileSync(process.execPath, ['build.mjs', '--dist', dist, '--metafile', file], {
    cwd: root,
    stdio: 'inherit',
  });
  const metafile = JSON.parse(fs.readFileSync(file, 'utf8'));
  fs.rmSync(file);
  return metafile;
}

function npm(cwd: string, args: string[]) {
  const quiet = ['--no-audit', '--no-fund', '--prefer-offline'];
  execFileSync('npm', [...args, ...quiet], { cwd, stdio: ['ignore', 'ignore', 'inherit'] });
}
