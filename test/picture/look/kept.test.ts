import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { openPage } from '../../../src/picture/look/kept';

const grey = (value: number, size = 8) =>
  sharp({ create: { width: size, height: size, channels: 3, background: { r: value, g: value, b: value } } })
    .png()
    .toBuffer();

describe('the page that is looked at', () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'kept-'));
  const file = path.join(folder, 'one.png');
  after(() => fs.rmSync(folder, { recursive: true }));

  it('is decoded once, and again when its file has changed', async () => {
    fs.writeFileSync(file, await grey(100));
    const first = await openPage(file, 1);
    assert.equal(await openPage(file, 1), first);
    fs.writeFileSync(file, await grey(200, 9));
    const second = await openPage(file, 1);
    assert.deepEqual([second.samples.width, second.samples.data[0]], [9, 200]);
  });

  it('says why there is none, and does not show the last one', async () => {
    await openPage(file, 1);
    fs.rmSync(file);
    await assert.rejects(openPage(file, 1), /no such file/);
  });
});
