import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { inTemporaryFolder } from '../../../src/book/git/temporary';
import { goingInto, VARIABLE } from '../revisions/support/going-into';
import { temporaryFolder } from '../support/folder';

describe('a temporary folder', () => {
  it('is there for as long as the work takes', async () => {
    const folder = await inTemporaryFolder(async folder => {
      fs.writeFileSync(path.join(folder, 'a'), 'a');
      return folder;
    });
    assert.equal(fs.existsSync(folder), false);
  });

  it('that cannot be made is told in a sentence: where, why, and the way out', async () => {
    const top = temporaryFolder({ file: 'no folder' });
    for (const [name, why] of [
      ['nowhere', 'there is no such folder'],
      ['file', 'it is no folder'],
    ]) {
      const at = path.join(top, name);
      const asked = goingInto(at, () => inTemporaryFolder(async () => assert.fail('there is none')));
      await assert.rejects(asked, {
        name: 'GitError',
        message: `Nothing can be written where temporary files go ("${at}": ${why}), and what git holds is unpacked there. Put that right, or name another folder in the environment variable ${VARIABLE}.`,
      });
    }
  });

  it('that is full is told so, whoever meets it', async () => {
    const full = Object.assign(new Error('write'), { code: 'ENOSPC' });
    await assert.rejects(
      inTemporaryFolder(() => Promise.reject(full)),
      { name: 'GitError', message: /^There is no room left where temporary files go .* (TMPDIR|TEMP)\.$/ },
    );
    const other = new Error('other');
    await assert.rejects(
      inTemporaryFolder(() => Promise.reject(other)),
      other,
    );
  });
});
