import assert from 'node:assert/strict';
import { changesOf } from '../../../src/report/sheet/changes';
import { picture } from '../text/support';

describe('what a conversion changes in the forecast', () => {
  const inks = picture('a.tif', [], { space: 'cmyk', encoding: 'four-channel' });
  const sound = picture('b.tif');

  it('is told before and after, odds first, for each target of the result', () => {
    const [change, ...others] = changesOf(inks, sound);
    assert.deepEqual(others, []);
    assert.equal(change.process, 'Offset, coated paper');
    const [tint, even, black] = change.rows;
    assert.match(tint.before, /A tint is seen/);
    assert.match(tint.after, /A tint is seen/);
    assert.match(even.label, /without a visible tint/);
    assert.match(black.after, /\d/);
  });

  it('names only figures that change beside the first', () => {
    assert.deepEqual(changesOf(sound, sound)[0].more, []);
    const forecasts = sound.forecasts.map(f => ({ ...f, range: { ...f.range, blockedShare: 0.5 } }));
    const [{ more }] = changesOf(sound, { ...sound, forecasts });
    assert.deepEqual(
      more.map(({ label }) => label),
      ['Prints as black'],
    );
    assert.equal(more[0].after, '50 %');
  });

  it('stands alone where a picture in colour has no forecast', () => {
    const colour = { ...picture('c.tif', [], { encoding: 'colour' }), forecasts: [] };
    const [{ rows, more }] = changesOf(colour, sound);
    assert.ok(rows.every(({ before }) => /no forecast/.test(before)));
    assert.deepEqual(more, []);
  });
});
