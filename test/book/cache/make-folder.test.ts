import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { makeFolder } from '../../../src/book/cache/make-folder';
import { temporaryFolder } from '../support/folder';

describe('making a folder', () => {
  it('makes those above it too, and bears that it is there or made by another at the same time', async () => {
    const folder = path.join(temporaryFolder(), 'a/b/c');
    await Promise.all([makeFolder(folder), makeFolder(folder), makeFolder(folder)]);
    await makeFolder(folder);
    assert.ok(fs.statSync(folder).isDirectory());
  });

  it('gives up where there can be none', async () => {
    await assert.rejects(makeFolder('/proc/nope/books'), { code: 'ENOENT' });
    const root = temporaryFolder({ file: '' });
    await assert.rejects(makeFolder(path.join(root, 'file/books')), { code: 'EEXIST' });
  });
});
