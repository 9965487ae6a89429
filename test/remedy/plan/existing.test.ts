import assert from 'node:assert/strict';
import { besides, type Existing } from '../../../src/remedy/plan/existing';
import type { Copy, Place } from '../../../src/remedy/plan/types';
import { wishKey } from '../../../src/remedy/plan/wish-key';
import type { Remedied } from '../../../src/shared/remedy';
import { askedFor, wishFor } from '../support';

const asked = askedFor('plate.jpg');
const { sha256 } = asked.pages[0];
const order: Copy = {
  output: '/book/plate.rgb-neutral.jpg',
  shown: 'plates/plate.rgb-neutral.jpg',
  told: [],
};
const made = { from: sha256, source: asked.file, wish: wishKey(wishFor()) };
const file = (of: Partial<typeof made> | null): Existing => ({
  kind: 'file',
  sha256: 'c'.repeat(64),
  made: of && { ...made, ...of },
});
const verdict = (existing: Existing, remedied: Remedied | null = null, kind: Place['kind'] = 'beside') =>
  besides(asked, order, wishFor(), { kind }, existing, remedied);
const record = (change: Partial<Remedied> = {}): Remedied => ({
  from: sha256,
  to: 'rgb-neutral',
  toned: false,
  fitted: false,
  ...change,
});

describe('what has a result’s name already', () => {
  it('nothing: it is written', () => assert.deepEqual(verdict({ kind: 'nothing' }), { do: 'write' }));

  it('a folder or a link: refused', () => assert.equal(verdict({ kind: 'no-file' }).do, 'refuse'));

  it('the same result: nothing to do', () => assert.equal(verdict(file({})).do, 'skip'));

  it('our result of this picture, of another wish or of an earlier state: replaced, and told', () => {
    const other = verdict(file({ wish: 'other' }));
    assert.ok(other.do === 'replace' && /in another way/.test(other.told));
    const older = verdict(file({ from: 'a'.repeat(64) }));
    assert.ok(older.do === 'replace' && /before the picture was changed/.test(older.told));
    assert.equal(older.sha256, 'c'.repeat(64), 'it must still be this when its time comes');
  });

  it('our result of another picture: refused', () =>
    assert.equal(verdict(file({ from: 'a'.repeat(64), source: '/book/other.jpg' })).do, 'refuse'));

  it('a file of which only its own record speaks: done if it says this picture and this encoding, else refused', () => {
    assert.equal(verdict(file(null), record()).do, 'skip');
    const fitted = verdict(file(null), record({ fitted: true }));
    assert.ok(fitted.do === 'skip' && /in another way: its tones were fitted\./.test(fitted.reason));
    assert.equal(verdict(file(null), record({ to: 'black-only' })).do, 'refuse');
    const older = verdict(file(null), record({ from: 'a'.repeat(64) }));
    assert.ok(older.do === 'refuse' && /somebody may have worked on it/.test(older.reason));
  });

  it('a file of somebody’s own: refused', () => {
    const own = verdict(file(null));
    assert.ok(own.do === 'refuse');
    assert.match(
      own.reason,
      /^"plates\/plate\.rgb-neutral\.jpg" is there .* not written over: rename it, or have the results written into/,
    );
    const there = verdict(file(null), null, 'folder');
    assert.ok(there.do === 'refuse');
    assert.match(there.reason, /not written over: move it away or name another folder\.$/);
  });
});
