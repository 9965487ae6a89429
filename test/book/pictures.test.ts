import assert from 'node:assert/strict';
import { bookPictures, standings } from '../../src/book/pictures';
import { noSettings } from '../../src/book/settings/settings';
import type { Remedied } from '../../src/shared/remedy';
import type { Target } from '../../src/shared/target';

import { greyFacts } from './support/facts';

const target = (name: string) => ({ name }) as Target;

describe('a picture’s standing', () => {
  it('is grey and of no part where nothing is said', () => {
    assert.deepEqual(standings(noSettings)('a.jpg'), {
      intent: 'grey',
      intentStated: false,
      part: null,
      targets: [],
      placed: null,
      reference: null,
    });
  });

  it('comes from the first part and the first intent that name it', () => {
    const of = standings({
      ...noSettings,
      targets: [target('run'), target('dummy'), target('cover')],
      parts: [
        { name: 'cover', pictures: ['cover/**'], targets: ['cover'] },
        { name: 'all', pictures: ['**'], targets: null },
      ],
      intents: [
        { intent: 'line', pictures: ['cover/map.png'], reference: null },
        { intent: 'toned', pictures: ['**'], reference: null },
      ],
    });
    const map = of('cover/map.png');
    assert.deepEqual([map.part, map.intent, map.intentStated], ['cover', 'line', true]);
    assert.deepEqual(
      map.targets.map(t => t.name),
      ['cover'],
    );
    assert.equal(of('in.jpg').targets.length, 3);
  });

  it('has the reference of its tone', () => {
    const of = standings({
      ...noSettings,
      intents: [{ intent: 'toned', pictures: ['s/**'], reference: 's/1.tif' }],
    });
    assert.deepEqual([of('s/2.tif').reference, of('a.tif').reference], ['s/1.tif', null]);
  });

  it('prints pictures of no part on the targets that no part claims', () => {
    const settings = {
      ...noSettings,
      targets: [target('run'), target('cover')],
      parts: [{ name: 'cover', pictures: ['cover/**'], targets: ['cover'] }],
    };
    const names = (path: string) => standings(settings)(path).targets.map(t => t.name);
    assert.deepEqual(names('in.jpg'), ['run']);
    assert.deepEqual(names('cover/1.jpg'), ['cover']);
  });

  it('takes the size written for the very path before one for many', () => {
    const of = standings({
      ...noSettings,
      placements: [
        { picture: 'a/**', width: 100 },
        { picture: 'a/(1).jpg', height: 50 },
      ],
    });
    assert.deepEqual(of('a/(1).jpg').placed, { width: undefined, height: 50 });
    assert.deepEqual(of('a/2.jpg').placed, { width: 100, height: undefined });
  });
});

describe('a picture of the book', () => {
  const intentOf = (remedied: Remedied | null, stated: boolean) => {
    const standing = standings({
      ...noSettings,
      intents: stated ? [{ intent: 'grey', pictures: ['**'], reference: null }] : [],
    })('a.jpg');
    const [picture] = bookPictures('a.jpg', [greyFacts('', { remedied })], standing);
    return [picture.intent, picture.intentStated];
  };

  it('is meant to be toned where a conversion gave it its tone, unless the settings say otherwise', () => {
    const remedied: Remedied = { from: 'a'.repeat(64), to: 'rgb-toned', toned: true, fitted: false };
    assert.deepEqual(intentOf(remedied, false), ['toned', true]);
    assert.deepEqual(intentOf(remedied, true), ['grey', true]);
    assert.deepEqual(intentOf({ ...remedied, toned: false }, false), ['grey', false]);
    assert.deepEqual(intentOf(null, false), ['grey', false]);
  });
});
