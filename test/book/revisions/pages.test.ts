import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import { discover } from '../../../src/book/discovery/discover';
import { Blobs } from '../../../src/book/revisions/blobs';
import { pagesOf } from '../../../src/book/revisions/pages';
import { openRepository } from '../../../src/book/revisions/repository';
import { commitOf } from '../../../src/book/revisions/revision';
import { snapshotOf } from '../../../src/book/revisions/snapshot';
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

describe('pictures of a revision', () => {
  for (const [what, settings] of [
    ['every picture', { pictures: null, ignore: [] }],
    ['what the settings leave out', { pictures: null, ignore: ['drafts/**', '!drafts/deep/02.tif'] }],
    ['what the settings name', { pictures: ['plates', '**/*.md'], ignore: [] }],
  ] as const)
    it(`are the ones that are found in its folder: ${what}`, async () => {
      const top = repositoryOf({});
      git(top, 'config', 'core.excludesFile', '/dev/null');
      for (const [name, text] of Object.entries(files)) {
        await fs.mkdir(`${top}/${name.replace(/[^/]*$/, '')}`, { recursive: true });
        await fs.writeFile(`${top}/${name}`, text);
      }
      git(top, 'add', '--all', '--force');
      git(top, 'commit', '--quiet', '-m', 'all');
      const repository = await openRepository(top);
      const snapshot = await snapshotOf(repository, await commitOf(repository, 'HEAD'));
      const given = { pictures: settings.pictures && [...settings.pictures], ignore: [...settings.ignore] };
      const blobs = new Blobs({ root: top, env: {} });
      const isPage = await pagesOf(snapshot, given, blobs);
      blobs.close();
      const found = await discover({ root: top, paths: [top], settings: given });
      assert.deepEqual(
        [...snapshot.keys()].filter(isPage).sort(),
        found.files.map(file => file.path),
      );
      assert.ok(found.files.length > 0);
    });
});
