import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { arrive, dress, takePlace } from '../../../src/remedy/keep/arrive';
import { temporaryFolder } from '../../book/support/folder';

const sha = (text: string) => createHash('sha256').update(text).digest('hex');
const OTHERWISE = 'It was changed.';

describe('arrival of a file', () => {
  const folder = (files: Record<string, string>) => {
    const at = temporaryFolder({ '.new.tmp': 'new', ...files });
    return { at, temporary: path.join(at, '.new.tmp'), file: path.join(at, 'a.jpg') };
  };
  const read = (file: string) => fs.readFileSync(file, 'utf8');

  it('gives it its name, where nothing has that', async () => {
    const { at, temporary, file } = folder({});
    await arrive(temporary, file);
    assert.equal(read(file), 'new');
    assert.deepEqual(fs.readdirSync(at), ['a.jpg']);
    assert.equal(fs.statSync(file).nlink, 1);
  });

  it('never writes over anything: a file, a link to nothing', async () => {
    const { temporary, file, at } = folder({ 'a.jpg': 'mine' });
    await assert.rejects(arrive(temporary, file), /came into being meanwhile/);
    assert.equal(read(file), 'mine');
    const link = path.join(at, 'link.jpg');
    fs.symlinkSync('nowhere', link);
    await assert.rejects(arrive(temporary, link), /came into being meanwhile/);
  });

  it('takes the place of what it should, and of nothing else', async () => {
    const { temporary, file } = folder({ 'a.jpg': 'old' });
    await assert.rejects(takePlace(temporary, file, sha('older'), OTHERWISE), /It was changed/);
    assert.equal(read(file), 'old');
    await takePlace(temporary, file, sha('old'), OTHERWISE);
    assert.equal(read(file), 'new');
  });

  it('takes no place that is empty, or a link', async () => {
    const { temporary, file, at } = folder({ 'b.jpg': 'old' });
    await assert.rejects(takePlace(temporary, file, sha('old'), OTHERWISE), /It was changed/);
    fs.symlinkSync(path.join(at, 'b.jpg'), file);
    await assert.rejects(takePlace(temporary, file, sha('old'), OTHERWISE), /It was changed/);
    assert.equal(read(path.join(at, 'b.jpg')), 'old');
  });

  it('brings the rights of what it stands in for', async () => {
    const { temporary } = folder({});
    const { uid, gid } = fs.statSync(temporary);
    await dress(temporary, { mode: 0o100640, uid, gid });
    assert.equal(fs.statSync(temporary).mode & 0o7777, 0o640);
  });
});
