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
    assert.ok(gone.kind === 'obstacle' && gone.why.text.startsWith('The file is not there any more'));
    fs.symlinkSync('gone.jpg', path.join(root, 'broken.jpg'));
    const broken = await look(path.join(root, 'broken.jpg'), root);
    assert.ok(
      broken.kind === 'obstacle' && broken.why.text.startsWith('This is a link to a file that is not'),
    );
  });

  it('says why a file whose name is no UTF-8 cannot be opened', async () => {
    const root = temporaryFolder();
    fs.writeFileSync(Buffer.from(`${root}/\xff.jpg`, 'latin1'), '');
    const [name] = fs.readdirSync(root);
    const seen = await look(path.join(root, name), root);
    assert.ok(seen.kind === 'obstacle' && seen.why.text.includes('no UTF-8'));
  });
});
