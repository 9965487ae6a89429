import assert from 'node:assert/strict';
import { IccError, LittleCms } from '../../../src/colour/icc/littlecms';

describe('LittleCMS', () => {
  it('stays usable after an error in words', async () => {
    const library = await LittleCms.load();
    assert.throws(
      () =>
        library.run(() => {
          throw new IccError('the profile is odd');
        }),
      /odd/,
    );
    assert.ok(library.usable);
    assert.ok(library.run(lcms => lcms.cmsCreateLab4Profile(null)) > 0);
  });

  it('is given up after a crash inside it', async () => {
    const library = await LittleCms.load();
    assert.throws(() => library.run(lcms => lcms._cmsCloseProfile(3)), /broke on it/);
    assert.ok(!library.usable);
    assert.throws(() => library.run(lcms => lcms._malloc(8)), /loaded again/);
  });
});
