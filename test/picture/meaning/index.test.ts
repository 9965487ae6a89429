import assert from 'node:assert/strict';
import fs from 'node:fs';
import { readingOf } from '../../../src/picture/meaning';
import { need } from '../../tools/need';

const icc = (name: string) =>
  fs.readFileSync(need(`/usr/share/color/icc/ghostscript/${name}`, 'libgs-common'));

describe('what the numbers of a picture mean', () => {
  it('is what its profile says', async () => {
    const reading = await readingOf({ space: 'rgb', icc: icc('srgb.icc') });
    assert.equal(reading.assumed, null);
    assert.deepEqual(reading.remarks, []);
    assert.equal(reading.profile!.space, 'rgb');
    assert.ok(reading.profile!.greyAxisChroma! < 0.1);
  });

  it('is found again for the next picture with the same profile', async () => {
    const [first, second] = [
      await readingOf({ space: 'rgb', icc: icc('a98.icc') }),
      await readingOf({ space: 'rgb', icc: icc('a98.icc') }),
    ];
    assert.equal(first.meaning, second.meaning);
  });

  it('stays to be had when many profiles have passed', async () => {
    const names = ['a98.icc', 'srgb.icc', 'rommrgb.icc', 'esrgb.icc', 'ps_rgb.icc', 'default_rgb.icc'];
    for (const name of names) await readingOf({ space: 'rgb', icc: icc(name) });
    for (const name of ['sgray.icc', 'ps_gray.icc', 'default_gray.icc', 'gray_to_k.icc'])
      await readingOf({ space: 'grey', icc: icc(name) }).catch(() => assert.fail(name));
    assert.equal((await readingOf({ space: 'rgb', icc: icc('a98.icc') })).assumed, null);
  });

  it('is assumed where there is no profile', async () => {
    const reading = await readingOf({ space: 'cmyk', icc: null });
    assert.equal(reading.profile, null);
    assert.match(reading.assumed!, /TR 006/);
  });

  it('is assumed, with a remark, where the profile is broken', async () => {
    const reading = await readingOf({ space: 'rgb', icc: icc('srgb.icc').subarray(0, 200) });
    assert.equal(reading.profile, null);
    assert.match(reading.assumed!, /sRGB/);
    assert.deepEqual(
      reading.remarks.map(r => r.code),
      ['bad-profile'],
    );
  });

  it('is assumed, with a remark, where the profile is for another kind of picture; the profile is told', async () => {
    const reading = await readingOf({ space: 'rgb', icc: icc('default_cmyk.icc') });
    assert.equal(reading.profile!.space, 'cmyk');
    assert.match(reading.assumed!, /sRGB/);
    assert.match(reading.remarks[0].text, /CMYK.*RGB/);
  });

  it('of a grey picture with an RGB profile is taken from equal channels, and that is said', async () => {
    const reading = await readingOf({ space: 'grey', icc: icc('srgb.icc') });
    assert.match(reading.assumed!, /equal red, green and blue/);
    assert.deepEqual(reading.remarks, []);
  });
});
