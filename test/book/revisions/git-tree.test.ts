import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { discover } from '../../../src/book/discovery/discover';
import { Blobs } from '../../../src/book/git/blobs';
import { openRepository } from '../../../src/book/git/repository';
import { commitOf } from '../../../src/book/git/revision';
import { snapshotOf } from '../../../src/book/git/snapshot';
import { existingFiles } from '../../../src/book/layouts/existing';
import { GitTree } from '../../../src/book/revisions/git-tree';
import { write } from '../support/folder';
import { git, repositoryOf } from './support/repository';

const files = {
  '.gitignore': 'proofs/\n*.tmp.tif\n',
  'plates/01.tif': 'a',
  'plates/02.TIF': 'a',
  'plates/02.tmp.tif': 'a',
  'plates/.hidden/03.tif': 'a',
  'plates/.gitignore': '!02.tmp.tif\n',
  'plates/old/.evengreyignore': '*\n!kept.tif\n',
  'plates/old/kept.tif': 'a',
  'plates/old/gone.tif': 'a',
  'proofs/01.tif': 'a',
  'proofs/.gitignore': '!*\n',
  'node_modules/x/01.tif': 'a',
  'drafts/01.tif': 'a',
  'drafts/deep/02.tif': 'a',
  'text.md': 'a',
};

/** By name: to a folder, through another, twice to one, in circles, out, to nothing, to files, and from within. */
const links = {
  figs: 'plates',
  'ends-in-slash': 'drafts/deep/',
  'first-ignored.tmp.tif': 'plates/01.tif',
  'drafts/again': '../plates/old',
  'drafts/deep/all': '../..',
  'drafts/self': '.',
  'drafts/out': '../..',
  'drafts/out.tif': '../..',
  'drafts/gone.tif': 'nothing.tif',
  'drafts/named.tif': '../text.md',
  'plates/zz': '../figs/old',
  'through.tif': 'figs/01.tif',
  zz: 'plates',
};

async function inTree(look: (root: string, tree: GitTree) => Promise<void>): Promise<void> {
  const top = repositoryOf({});
  git(top, 'config', 'core.excludesFile', '/dev/null');
  write(top, files);
  for (const [name, target] of Object.entries(links)) fs.symlinkSync(target, path.join(top, name));
  git(top, 'add', '--all', '--force');
  git(top, 'commit', '--quiet', '-m', 'all');
  const repository = await openRepository(top);
  const blobs = new Blobs({ root: top, env: {} });
  const tree = new GitTree(await snapshotOf(repository, await commitOf(repository, 'HEAD')), blobs);
  await look(top, tree).finally(() => blobs.close());
}

describe('a folder as git holds it', () => {
  for (const [what, pictures, ignore] of [
    ['every picture', null, []],
    ['what the settings leave out', null, ['drafts/**', '!drafts/deep/02.tif']],
    ['what the settings name', ['plates', '**/*.md'], []],
    ['what stays where the first link to a folder is left out', null, ['figs']],
  ] as [string, string[] | null, string[]][])
    it(`has the pictures that are found on the disk: ${what}`, () =>
      inTree(async (root, tree) => {
        const search = { root, paths: [root], settings: { pictures, ignore } };
        const [disk, held] = [await discover(search), await discover({ ...search, tree })];
        assert.deepEqual(held, disk);
        assert.ok(disk.files.some(file => !file.obstacle));
        for (const { path: name, obstacle } of held.files)
          assert.equal((await tree.contentAt(name)) === null, obstacle !== null, name);
      }));

  it('has the files that a layout finds on the disk, by every way that leads to them', () =>
    inTree(async (root, tree) => {
      const folders = [
        '',
        'plates/',
        'figs/',
        'zz/',
        'figs/zz/',
        'drafts/deep/all/zz/old/',
        'drafts/out/',
        'no/',
      ];
      const asked = folders.flatMap(folder =>
        ['01.tif', 'kept.tif', 'old', 'zz', 'through.tif', 'nothing.tif'].map(name => folder + name),
      );
      const [disk, held] = [await existingFiles(root, asked), await tree.existing(asked)];
      for (const one of asked) assert.equal(held(one), disk(one), one);
      assert.equal(held('figs/zz/kept.tif'), 'figs/zz/kept.tif');
    }));
});
