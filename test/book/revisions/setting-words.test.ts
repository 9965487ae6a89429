import assert from 'node:assert/strict';
import { otherSettings } from '../../../src/book/revisions/setting-words';
import { noSettings, type Settings } from '../../../src/book/settings/settings';

const told = (was: Partial<Settings>, is: Partial<Settings>) =>
  otherSettings({ ...noSettings, ...was }, { ...noSettings, ...is }, path => path);

describe('settings before and after, in words', () => {
  it('are told from what to what', () => {
    assert.deepEqual(told({ textWidth: 110 }, { textWidth: 120 }), ['"textWidth" from 110 mm to 120 mm']);
    assert.deepEqual(told({ trim: { width: 210, height: 280 } }, {}), ['"trim" from 210 × 280 mm to none']);
  });

  it('tell of a list what is otherwise in it, and no more than a few', () => {
    const spreads = (...names: string[]) => names.map(name => [name, `${name}2`]);
    assert.deepEqual(told({ spreads: spreads('a', 'b') }, { spreads: spreads('b', 'c') }), [
      '"spreads" from a with a2 to c with c2',
    ]);
    assert.deepEqual(told({}, { spreads: spreads('a', 'b', 'c', 'd', 'e') }), [
      '"spreads" from none to a with a2, b with b2, c with c2 and 2 more',
    ]);
    assert.deepEqual(told({ spreads: spreads('a', 'b') }, { spreads: spreads('b', 'a') }), [
      '"spreads" in another order',
    ]);
  });

  it('say what pictures are meant to be, their parts and their sizes', () => {
    const is: Partial<Settings> = {
      parts: [{ name: 'cover', pictures: ['c.jpg'], targets: ['inkjet'] }],
      intents: [{ intent: 'toned', pictures: ['t*.jpg'], reference: 't1.jpg' }],
      placements: [{ picture: 'a.jpg', width: 90, height: 60 }],
    };
    assert.deepEqual(told({}, is), [
      '"parts" from none to cover (c.jpg, inkjet)',
      '"intent" from none to toned (t*.jpg, like t1.jpg)',
      '"placements" from none to a.jpg 90 mm wide, 60 mm high',
    ]);
  });
});
