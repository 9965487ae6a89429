import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { type Discovery, discover } from '../../../src/book/discovery/discover';
import { temporaryFolder } from '../support/folder';

const none = { pictures: null, ignore: [] };
const all = (root: string, settings: { pictures: string[] | null; ignore: string[] } = none) =>
  discover({ root, paths: [root], settings });
const paths = (found: Discovery) => found.files.map(file => file.path);
const obstacles = (found: Discovery) =>
  Object.fromEntries(found.files.flatMap(f => (f.obstacle ? [[f.path, f.obstacle.reason]] : [])));

describe('discovery', () => {
  it('takes files by their extension, whatever its case, and sorts by code unit', async () => {
    const root = temporaryFolder({
      'b.JPG': '',
      'a/z.tif': '',
      'a b/ä ö.png': '',
      'Z.webp': '',
      'x.psd': '',
      'y.svg': '',
      'notes.txt': '',
      'no-extension': '',
      jpg: '',
    });
    assert.deepEqual(paths(await all(root)), ['Z.webp', 'a b/ä ö.png', 'a/z.tif', 'b.JPG', 'x.psd', 'y.svg']);
  });

  it('takes what the globs say instead, without what is ignored', async () => {
    const root = temporaryFolder({
      'plates/1.tif': '',
      'plates/old/1.tif': '',
      'plates/plate (2).tif': '',
      'scans/one': '',
      'else.tif': '',
    });
    const settings = {
      pictures: ['plates/**/*.tif', 'scans', 'plates/plate (2).tif'],
      ignore: ['plates/old'],
    };
    assert.deepEqual(paths(await all(root, settings)), ['plates/1.tif', 'plates/plate (2).tif', 'scans/one']);
    const but = { pictures: ['**/*.tif', '!plates/**'], ignore: [] };
    assert.deepEqual(paths(await all(root, but)), ['else.tif']);
  });

  it('says what of "ignore" matches nothing that was searched', async () => {
    const root = temporaryFolder({
      'plates/1.tif': '',
      'plates/old/1.tif': '',
      'plates/new/1.tif': '',
      'n.txt': '',
    });
    const ignore = [
      'plates/old',
      'plats/**',
      '**/*.txt',
      'plates/o*/*.tif',
      '!plates/new/1.tif',
      '!plates/2.tif',
    ];
    const found = await all(root, { pictures: null, ignore });
    assert.deepEqual(found.idleIgnore, ['plats/**', 'plates/o*/*.tif', '!plates/2.tif']);
    assert.deepEqual(paths(found), ['plates/1.tif', 'plates/new/1.tif']);
  });

  it('passes over hidden files and node_modules', async () => {
    const root = temporaryFolder({
      '.git/a.jpg': '',
      '.evengrey/a.jpg': '',
      'node_modules/x/a.jpg': '',
      '._a.jpg': '',
      'a.jpg': '',
    });
    assert.deepEqual(paths(await all(root)), ['a.jpg']);
  });

  it('obeys ignore files, nested ones too, as git does, and counts what they leave out', async () => {
    const root = temporaryFolder({
      '.gitignore': '*.tif\n/out/\n',
      'a.tif': '',
      'out/a.jpg': '',
      'deep/out/a.jpg': '',
      'deep/.gitignore': '!keep.tif\nb.jpg\n',
      'deep/keep.tif': '',
      'deep/b.jpg': '',
      'b.jpg': '',
      'proofs/.evengreyignore': '*\n',
      'proofs/a.jpg': '',
    });
    const found = await all(root);
    assert.deepEqual(paths(found), ['b.jpg', 'deep/keep.tif', 'deep/out/a.jpg']);
    assert.equal(found.ignored, 3);
    // a folder searched by name still lies under the ignore files above it
    const below = await discover({ root, paths: [path.join(root, 'deep')], settings: none });
    assert.deepEqual(paths(below), ['deep/keep.tif', 'deep/out/a.jpg']);
  });

  it('takes named files as they are', async () => {
    const root = temporaryFolder({ '.gitignore': '*.tif', 'a.tif': '', 'b.dat': '' });
    const named = ['a.tif', 'b.dat'].map(name => path.join(root, name));
    assert.deepEqual(paths(await discover({ root, paths: named, settings: none })), ['a.tif', 'b.dat']);
  });

  it('never opens pipes, and does not follow links out of the root', async () => {
    const outside = temporaryFolder({ 'a.jpg': '', 'folder/b.jpg': '' });
    const root = temporaryFolder({ 'real.jpg': '', 'inner/c.jpg': '' });
    execFileSync('mkfifo', [
      path.join(root, 'pipe.jpg'),
      path.join(root, 'pipe.txt'),
      path.join(root, '.gitignore'),
    ]);
    const link = (to: string, name: string) => fs.symlinkSync(to, path.join(root, name));
    link(path.join(outside, 'a.jpg'), 'out.jpg');
    link(path.join(outside, 'folder'), 'out-folder');
    link('/dev/zero', 'device.png');
    link('real.jpg', 'in.jpg');
    link('gone.jpg', 'broken.jpg');
    link('self.jpg', 'self.jpg');
    const found = await all(root);
    assert.deepEqual(paths(found), [
      'broken.jpg',
      'device.png',
      'in.jpg',
      'inner/c.jpg',
      'out.jpg',
      'pipe.jpg',
      'real.jpg',
      'self.jpg',
    ]);
    assert.deepEqual(obstacles(found), {
      'broken.jpg': 'missing',
      'device.png': 'outside',
      'out.jpg': 'outside',
      'pipe.jpg': 'not-a-file',
      'self.jpg': 'missing',
    });
    assert.deepEqual(found.notEntered, [
      { path: 'out-folder', why: "it is a link that leads out of the book's folder" },
    ]);
  });

  it('enters linked folders once and never in a circle', async () => {
    const root = temporaryFolder({ 'a/1.jpg': '', 'b/2.jpg': '' });
    fs.symlinkSync('../b', path.join(root, 'a/to-b'));
    fs.symlinkSync('../a', path.join(root, 'b/to-a'));
    fs.symlinkSync('.', path.join(root, 'here'));
    assert.deepEqual(paths(await all(root)), ['a/1.jpg', 'a/to-b/2.jpg', 'b/2.jpg', 'b/to-a/1.jpg']);
  });

  it('stops when cancelled', async () => {
    const root = temporaryFolder({ 'a.jpg': '' });
    const signal = AbortSignal.abort();
    await assert.rejects(discover({ root, paths: [root], settings: none, signal }), { name: 'AbortError' });
  });
});
