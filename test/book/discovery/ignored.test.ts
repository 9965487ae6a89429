import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { Ignored } from '../../../src/book/discovery/ignored';
import { DiskTree } from '../../../src/book/discovery/tree';
import { temporaryFolder, write } from '../support/folder';

describe('ignore files', () => {
  // outside check: git itself (gitignore(5)), asked about the same tree
  it('leave out what git leaves out', async () => {
    const root = temporaryFolder();
    const names = [
      'a.tif',
      'b.jpg',
      'out/b.jpg',
      'in/out/b.jpg',
      'in/x.tif',
      'in/keep.tif',
      'in/b.jpg',
      'Ä.tif',
    ];
    write(root, Object.fromEntries(names.map(name => [name, ''])));
    write(root, { '.gitignore': '# all\n*.tif\n/out/\n!Ä.tif\n', 'in/.gitignore': '!keep.tif\n/b.jpg\n' });
    execFileSync('git', ['init', '-q'], { cwd: root });
    const top = await entered(Ignored.none, root, '');
    const inner = await entered(top, root, 'in');
    for (const name of names) {
      const git = isIgnoredByGit(root, name);
      const steps = name.split('/');
      const folders = steps.slice(0, -1).map((_, i) => steps.slice(0, i + 1).join('/'));
      const layers = name.startsWith('in/') ? inner : top;
      const ours = folders.some(folder => layers.has(folder, true)) || layers.has(name, false);
      assert.equal(ours, git, name);
    }
  });

  it('let our own file have the last word', async () => {
    const root = temporaryFolder({ '.gitignore': '*.tif', '.evengreyignore': '!a.tif' });
    const ignored = await entered(Ignored.none, root, '');
    assert.equal(ignored.has('a.tif', false), false);
    assert.equal(ignored.has('b.tif', false), true);
  });

  it('are not waited for when they are pipes', async () => {
    const root = temporaryFolder();
    execFileSync('mkfifo', [path.join(root, '.gitignore')]);
    assert.equal((await entered(Ignored.none, root, '')).has('a.tif', false), false);
    assert.ok(fs.existsSync(root));
  });
});

async function entered(above: Ignored, root: string, folder: string): Promise<Ignored> {
  return above.with(folder, await (await DiskTree.at(root)).ignoreTexts(folder));
}

function isIgnoredByGit(cwd: string, name: string): boolean {
  try {
    execFileSync('git', ['check-ignore', '-q', name], { cwd });
    return true;
  } catch {
    return false;
  }
}
