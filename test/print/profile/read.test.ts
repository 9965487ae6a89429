import assert from 'node:assert/strict';
import fs from 'node:fs';
import { readPressProfile } from '../../../src/print/profile/read';
import { fourInk, printerGrey, printerRgb, screenFile } from './profiles';

describe('the print house’s profile', () => {
  it('is read: what it takes, its paper and black, its own greys', async () => {
    const profile = await readPressProfile(fourInk());
    assert.equal(profile.space, 'cmyk');
    assert.match(profile.description, /CMYK/);
    assert.equal(profile.greys!.length, 101 * 4);
    assert.ok(profile.greys!.subarray(0, 4).every(ink => ink < 0.01));
    const lab = new Float64Array(3);
    profile.lab([0, 0, 0, 0], lab);
    assert.ok(lab[0] > 80 && lab[0] < 99);
    assert.equal(JSON.stringify({ profile }), JSON.stringify({ profile: profile.id }));
  });

  it('may take R, G, B or grey', async () => {
    assert.equal((await readPressProfile(printerRgb())).space, 'rgb');
    const grey = await readPressProfile(printerGrey());
    assert.deepEqual([grey.space, grey.description], ['grey', 'Grey of a house']);
  });

  it('is not a screen’s, and not damaged: said in words', async () => {
    await assert.rejects(
      readPressProfile(fs.readFileSync(screenFile())),
      /describes a screen .* ask the print house/,
    );
    await assert.rejects(readPressProfile(fourInk().subarray(0, 5000)), /cut short/);
    await assert.rejects(readPressProfile(new Uint8Array(500)), /no ICC profile/);
  });
});
