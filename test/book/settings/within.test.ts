import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { disk, fileWithin, isWithin } from '../../../src/book/settings/within';
import { temporaryFolder } from '../support/folder';

describe('within the root', () => {
  it('is told by whole steps of a path', () => {
    assert.ok(isWithin('/a/b', '/a/b') && isWithin('/a/b', '/a/b/c') && isWithin('/a/b', '/a/b/..c'));
    assert.ok(!isWithin('/a/b', '/a') && !isWithin('/a/b', '/a/bc') && !isWithin('/a/b', '/c'));
    assert.ok(isWithin('/', '/a'));
  });

  it('a regular file is found, also by a link that stays inside', async () => {
    const root = temporaryFolder({ 'in/house.json': '{}' });
    fs.symlinkSync('in/house.json', path.join(root, 'link.json'));
    for (const written of ['in/house.json', './in/../in/house.json', 'link.json']) {
      const found = await fileWithin(root, root, written);
      assert.ok(found.ok, written);
    }
    const found = await fileWithin(root, path.join(root, 'in'), 'house.json');
    assert.ok(found.ok && found.relative === 'in/house.json');
  });

  it('a folder, a device and what is not there are refused in words', async () => {
    const root = temporaryFolder({ 'in/house.json': '{}' });
    const why = async (within: string, written: string) => {
      const found = await fileWithin(within, root, written);
      return found.ok ? '' : `${found.why}: ${found.message}`;
    };
    assert.equal(await why(root, 'in'), 'other: "in" is not a file.');
    assert.equal(await why('/', '/dev/zero'), 'other: "/dev/zero" is not a file.');
    assert.equal(await why(root, 'gone.json'), 'missing: There is no file "gone.json".');
    assert.match(await why(root, '/dev/zero'), /^other: .* lies outside the book's folder/);
  });

  it('a text without end is not read', async () => {
    const root = temporaryFolder();
    const file = path.join(root, 'large.json');
    fs.writeFileSync(file, '');
    fs.truncateSync(file, 5 * 1024 * 1024);
    await assert.rejects(disk.bytes(file, 4 * 1024 * 1024), /larger than 4 MB/);
  });
});
