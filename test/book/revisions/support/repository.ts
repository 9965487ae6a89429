import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { temporaryFolder, write } from '../../support/folder';

/** Who commits in tests, and nothing of the machine's own settings. */
const env = {
  PATH: process.env.PATH,
  HOME: '/nonexistent',
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_AUTHOR_NAME: 'Test',
  GIT_AUTHOR_EMAIL: 'test@example.org',
  GIT_AUTHOR_DATE: '2026-01-01T00:00:00Z',
  GIT_COMMITTER_NAME: 'Test',
  GIT_COMMITTER_EMAIL: 'test@example.org',
  GIT_COMMITTER_DATE: '2026-01-01T00:00:00Z',
};

export function git(folder: string, ...args: string[]): string {
  return execFileSync('git', ['-c', 'protocol.file.allow=always', '-C', folder, ...args], {
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
  }).toString();
}

export type Files = Record<string, string | Uint8Array>;

/** A true repository in a folder for one test, on the branch `main`, with one commit of `files`. */
export function repositoryOf(files: Files, inFolder = ''): string {
  const top = temporaryFolder();
  git(top, 'init', '--quiet', '--initial-branch=main');
  commit(
    top,
    Object.fromEntries(
      Object.entries(files).map(([name, content]) => [path.posix.join(inFolder, name), content]),
    ),
  );
  return top;
}

/** Commits everything that is there, `files` written before; gives the commit's name. */
export function commit(top: string, files: Files = {}, message = 'change'): string {
  write(top, files);
  git(top, 'add', '--all');
  git(top, 'commit', '--quiet', '--allow-empty', '-m', message);
  return git(top, 'rev-parse', 'HEAD').trim();
}

/** A clone with the files of `main`, and of the past no contents; with a filter of git's, other things are left out. */
export function partialClone(top: string, filter = 'blob:none'): string {
  git(top, 'config', 'uploadpack.allowFilter', 'true');
  const clone = path.join(temporaryFolder(), 'clone');
  git(top, 'clone', '--quiet', `--filter=${filter}`, `file://${top}`, clone);
  return clone;
}
