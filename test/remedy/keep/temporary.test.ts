import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { namesPicture } from '../../../src/book/discovery/extensions';
import { sweep, temporaryFor, withTemporary } from '../../../src/remedy/keep/temporary';
import { temporaryFolder } from '../../book/support/folder';

describe('temporary files', () => {
  it('lie beside, hidden, and are called like no picture', () => {
    const file = temporaryFor('/book/plate.jpg');
    assert.equal(file, `/book/.plate.jpg.evengrey-${process.pid}.tmp`);
    assert.ok(!namesPicture(file));
  });

  it('have a name that can be written, however long the picture’s', () => {
    const folder = temporaryFolder();
    const names = [`${'ä'.repeat(120)}1.jpg`, `${'ä'.repeat(120)}2.jpg`];
    const files = names.map(name => temporaryFor(path.join(folder, name)));
    for (const file of files) fs.writeFileSync(file, '');
    assert.notEqual(files[0], files[1]);
  });

  it('are gone after the work, also where it failed', async () => {
    const file = path.join(temporaryFolder(), 'a.jpg');
    const work = withTemporary(file, async temporary => {
      fs.writeFileSync(temporary, 'half');
      throw new Error('no');
    });
    await assert.rejects(work, /no/);
    assert.deepEqual(fs.readdirSync(path.dirname(file)), []);
  });

  it('of killed runs are swept; those of others that run, and all else, stay', async () => {
    const { pid } = spawnSync('true');
    const stays = ['.a.jpg.evengrey-1.tmp', '.b.evengrey.tmp', 'c.tmp', `d.evengrey-${pid}.tmp`, 'e.jpg'];
    const goes = [
      `.a.jpg.evengrey-${pid}.tmp`,
      `.b\nb.jpg.evengrey-${pid}.tmp`,
      `.old.jpg.evengrey-${process.pid}.tmp`,
    ];
    const folder = temporaryFolder(Object.fromEntries([...stays, ...goes].map(name => [name, ''])));
    await withTemporary(path.join(folder, 'ours.jpg'), async temporary => {
      fs.writeFileSync(temporary, '');
      await sweep(folder);
      assert.deepEqual(fs.readdirSync(folder).sort(), [...stays, path.basename(temporary)].sort());
    });
  });

  it('are looked for in vain where there is no folder', () => sweep('/no/such/folder'));
});
