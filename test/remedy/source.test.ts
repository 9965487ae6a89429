import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { readFacts } from '../../src/picture/read';
import { RemedyError } from '../../src/remedy/remedy-error';
import { factsAhead, readPicture } from '../../src/remedy/source';
import { temporaryFolder } from '../book/support/folder';

const KNOWN = path.join('test', 'picture', 'known');
const refused = (wanted: RegExp) => (error: Error) =>
  error instanceof RemedyError && wanted.test(error.message);

describe('a picture read for a remedy', () => {
  it('comes with its header, its samples, its meaning and its bytes', async () => {
    const { header, samples, reading, sha256, bytes } = await readPicture(path.join(KNOWN, 'cmyk8.tif'));
    assert.equal(header.space, 'cmyk');
    assert.equal(samples.channels, 4);
    assert.match(reading.assumed!, /TR 006/);
    assert.match(sha256, /^[0-9a-f]{64}$/);
    assert.equal(bytes.toString('latin1', 0, 2), 'II');
  });
  it("is refused in the reader's own words where it cannot be read", async () => {
    await assert.rejects(readPicture(path.join(KNOWN, 'picture.psd')), RemedyError);
    await assert.rejects(readPicture(path.join(KNOWN, 'none.tif')), refused(/no such file/));
  });
  it('is not decoded again where its facts were read before, once and only as long as it is the same', async () => {
    const at = (name: string) => path.join(KNOWN, name);
    const file = path.join(temporaryFolder({ 'a.tif': fs.readFileSync(at('cmyk8.tif')) }), 'a.tif');
    const [{ encoding, sha256 }] = await factsAhead(file);
    assert.equal(encoding, (await readFacts({ file }))[0].encoding);
    const ahead = await readPicture(file);
    const anew = await readPicture(file);
    assert.deepEqual(ahead, anew);
    assert.equal(ahead.sha256, sha256);
    assert.notEqual(ahead.samples, anew.samples);

    await factsAhead(file);
    fs.copyFileSync(at('rgb8.tif'), file);
    assert.equal((await readPicture(file)).header.space, 'rgb');
  });
  it('is refused where it holds more pages than one', async () =>
    assert.rejects(
      readPicture(path.join(KNOWN, 'pages.tif')),
      refused(/holds \d pages.*save the pages as files of their own/),
    ));
});
