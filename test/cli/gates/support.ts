import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { commit, git, repositoryOf } from '../../book/revisions/support/repository';
import { temporaryFolder } from '../../book/support/folder';
import { pictures } from '../support/book';
import { dist } from '../support/run';

/**
 * A repository with a book in `book`: an even one, or one with a picture that is cut short. Its branch has parted from
 * `origin/main`, where the book is even.
 */
export function workspace(faulty: boolean): string {
  const root = repositoryOf(
    {
      'evengrey.json': '{"process": "offset-coated"}',
      '01.tif': pictures.neutral(1),
      '02.tif': pictures.neutral(2),
    },
    'book',
  );
  git(root, 'update-ref', 'refs/remotes/origin/main', 'HEAD');
  if (faulty) commit(root, { 'book/02.tif': pictures.neutral(2).subarray(0, 900) });
  return root;
}

/** Runs a script as a runner would, without the machine's own environment. */
export function bash(script: string, cwd: string, env: Record<string, string> = {}) {
  const file = path.join(temporaryFolder(), 'script.sh');
  fs.writeFileSync(file, script);
  const { status, stdout, stderr } = spawnSync('bash', ['--noprofile', '--norc', '-eo', 'pipefail', file], {
    cwd,
    encoding: 'utf8',
    env: { PATH: process.env.PATH, HOME: temporaryFolder(), EVENGREY_CACHE_DIR: temporaryFolder(), ...env },
  });
  return { status, stdout, stderr };
}

/** A folder that looks like an installed Evengrey: the built program, and what it asks for at run time. */
export function installed(): string {
  const folder = temporaryFolder({
    'bin/npx':
      '#!/bin/sh\n# without it the name would be asked of a registry\n[ "$1" = --no-install ] || exit 9\nshift 2\nexec node "$(dirname "$0")/../dist/cli.js" "$@"\n',
  });
  fs.chmodSync(path.join(folder, 'bin/npx'), 0o755);
  fs.symlinkSync(dist, path.join(folder, 'dist'));
  return folder;
}
