import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { copyOriginal, keepOriginal, originalIn } from '../../../src/remedy/keep/originals';
import { keepOf, openKeep } from '../../../src/remedy/keep/place';
import { temporaryFolder } from '../../book/support/folder';

const sha = (text: string) => createHash('sha256').update(text).digest('hex');

describe('originals', () => {
  async function kept(content = 'the original') {
    const root = temporaryFolder({ 'a.jpg': content });
    const keep = await openKeep(await keepOf(root));
    return { root, keep, file: path.join(root, 'a.jpg') };
  }

  it('are kept by their content, once, and come back the same', async () => {
    const { keep, file, root } = await kept();
    await keepOriginal(keep.folder, file, sha('the original'));
    const before = fs.statSync(originalIn(keep.folder, sha('the original')));
    await keepOriginal(keep.folder, file, sha('the original'));
    assert.equal(fs.statSync(originalIn(keep.folder, sha('the original'))).ino, before.ino);
    assert.deepEqual(fs.readdirSync(path.join(keep.folder, 'originals')), [sha('the original')]);
    await copyOriginal(keep.folder, sha('the original'), path.join(root, 'back'));
    assert.equal(fs.readFileSync(path.join(root, 'back'), 'utf8'), 'the original');
  });

  it('are not kept under the hash of something else: the picture was changed', async () => {
    const { keep, file } = await kept('changed since');
    await assert.rejects(keepOriginal(keep.folder, file, sha('the original')), /changed while/);
    assert.deepEqual(fs.readdirSync(path.join(keep.folder, 'originals')), []);
  });

  it('are kept anew where what lies there is damaged', async () => {
    const { keep, file } = await kept();
    fs.writeFileSync(originalIn(keep.folder, sha('the original')), 'the orig');
    await keepOriginal(keep.folder, file, sha('the original'));
    assert.equal(fs.readFileSync(originalIn(keep.folder, sha('the original')), 'utf8'), 'the original');
  });

  it('are not given out damaged, or where there are none', async () => {
    const { keep, root } = await kept();
    const to = path.join(root, 'back');
    await assert.rejects(copyOriginal(keep.folder, sha('x'), to), /missing or damaged/);
    fs.writeFileSync(originalIn(keep.folder, sha('x')), 'y');
    await assert.rejects(copyOriginal(keep.folder, sha('x'), to), /missing or damaged/);
    assert.ok(!fs.existsSync(to));
  });
});
