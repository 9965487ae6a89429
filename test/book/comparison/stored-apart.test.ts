import assert from 'node:assert/strict';
import { storedApart } from '../../../src/book/comparison/stored-apart';
import { picture, pictures, target } from '../../rules/support/pictures';

const targets = [target('offset-uncoated')];
const [{ name }] = targets;
const greys = pictures(5, 'single-channel', { targets });

describe('how a picture is stored beside the others', () => {
  it('is told where more than half of the others are stored otherwise', () => {
    const odd = picture('rgb-neutral', { targets });
    const of = storedApart([...greys, odd]);
    assert.deepEqual(of(odd, name), {
      any: true,
      stored: { as: 'rgb-neutral', others: 'single-channel' },
      alike: false,
    });
    assert.deepEqual(of(greys[0], name), { any: true, stored: null, alike: true });
    assert.deepEqual(of(greys[0], null), { any: true, stored: null, alike: true });
  });

  it('is nothing where it is alone in its part, or no way has the most', () => {
    const cover = picture('rgb-neutral', { targets, part: 'cover' });
    assert.equal(storedApart([...greys, cover])(cover, name).any, false);
    const three = (['rgb-neutral', 'single-channel', 'black-only'] as const).map(encoding =>
      picture(encoding, { targets }),
    );
    assert.deepEqual(storedApart(three)(three[0], name), { any: true, stored: null, alike: false });
  });

  it('takes a trace of colour over R = G = B for no other way, and calls it by its name where that is apart', () => {
    const residual = picture('rgb-residual', { targets });
    const neutral = pictures(3, 'rgb-neutral', { targets });
    assert.equal(storedApart([...neutral, residual])(residual, name).alike, true);
    assert.equal(storedApart([...greys, residual])(residual, name).stored?.as, 'rgb-residual');
  });
});
