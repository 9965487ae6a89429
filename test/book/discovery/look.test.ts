import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { look } from '../../../src/book/discovery/look';
import { temporaryFolder } from '../support/folder';

describe('looking at a path', () => {
  it('tells files, folders and what must not be opened', async () => {
    const root = temporaryFolder({ 'a.jpg': '', 'folder/b.jpg': '' });
    fs.symlinkSync('folder', path.join(root, 'linked'));
    assert.deepEqual(await look(path.join(root, 'a.jpg'), root), { kind: 'file' });
    assert.deepEqual(await look(path.join(root, 'linked'), root), {
      kind: 'folder',
      real: path.join(root, 'folder'),
      linked: true,
    });
    const device = await look('/dev/null', '/');
    assert.ok(device.kind === 'obstacle' && device.why.text.startsWith('This is a device'));
    const gone = await look(path.join(root, 'gone.jpg'), root);
    assert.ok(gone.kind === 'obstacle' && gone.why.reason === 'missing');
  });
});
