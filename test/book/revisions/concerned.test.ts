import assert from 'node:assert/strict';
import { concernedBy, concernedOf, type Ground, goneFrom } from '../../../src/book/revisions/concerned';
import { settingsChanges } from '../../../src/book/revisions/settings-changes';
import { noSettings, type Settings } from '../../../src/book/settings/settings';
import { defaultTarget } from '../../../src/print';

const PATHS = ['a.tif', 'b.tif'];
const ground = (settings: Partial<Settings> = {}, more: Partial<Ground> = {}): Ground => ({
  settings: { ...noSettings, targets: [defaultTarget('offset-coated')], ...settings },
  ...{ waivers: [], placements: new Map(), missing: [], pages: new Map(PATHS.map(path => [path, null])) },
  ...more,
});
const reasons = (before: Ground | null, now: Ground) =>
  Object.fromEntries(concernedOf(PATHS, concernedBy(before, now)));
const placed = (width: number, file = 'book.md') =>
  new Map([
    ['b.tif', [{ file, line: 1, column: 1, picture: 'b.tif', size: { width } }]],
  ]) as unknown as Ground['placements'];
const waiver = { rule: 'untagged', picture: 'b.tif', content: ['1'], value: {} };

describe('whom a change of what pictures are judged by concerns', () => {
  it('is nobody where nothing changed but the ground itself, and all where there was none', () => {
    assert.deepEqual(reasons(ground(), ground()), {});
    assert.deepEqual(reasons(null, ground()), { 'a.tif': 'settings', 'b.tif': 'settings' });
  });

  it('is every picture by the same keys by which a comparison tells changed settings', () => {
    const changes: Partial<Settings>[] = [
      { targets: [defaultTarget('inkjet')] },
      { rules: { untagged: 'off' } },
      { parts: [{ name: 'x', pictures: ['x'], targets: null }] },
      { intents: [{ intent: 'toned', pictures: ['x'], reference: null }] },
      { trim: { width: 1, height: 1 } },
      { placements: [{ picture: 'x', width: 1 }] },
      { textWidth: 100 },
      { spreads: [['x', 'y']] },
    ];
    for (const change of changes) {
      const [before, after] = [ground(), ground(change)];
      assert.equal(concernedBy(before, after).all, 'settings', Object.keys(change)[0]);
      assert.notDeepEqual(settingsChanges(before, after, PATHS), []);
    }
    const entry: Partial<Settings>[] = [{ ignore: ['x'] }, { pictures: ['*.tif'] }, { layouts: ['book.md'] }];
    for (const change of entry)
      assert.deepEqual(reasons(ground(), ground(change)), {}, 'they let in and out');
  });

  it('is who was let in, and who is placed at another size, wherever that is', () => {
    const one = new Map([['a.tif', null]]);
    assert.deepEqual(reasons(ground({ ignore: ['b.tif'] }, { pages: one }), ground()), {
      'b.tif': 'placing',
    });
    assert.deepEqual(goneFrom(ground(), ground({}, { pages: one }), new Set()), ['b.tif']);
    const at = (placements: Ground['placements']) => ground({}, { placements });
    assert.deepEqual(reasons(at(placed(10)), at(placed(20))), { 'b.tif': 'placing' });
    assert.deepEqual(reasons(at(placed(10)), at(placed(10, 'other.md'))), {});
  });

  it('is the picture whose waiver was taken out, and everybody where it was of the book', () => {
    const waived = (...waivers: Ground['waivers']) => ground({}, { waivers });
    assert.deepEqual(reasons(waived(waiver), waived()), { 'b.tif': 'waiver' });
    assert.deepEqual(reasons(waived(waiver), waived({ ...waiver, reason: 'It is meant.' })), {});
    assert.deepEqual(reasons(waived(), waived(waiver)), {}, 'nothing is found that was not');
    assert.equal(concernedBy(waived({ ...waiver, picture: null }), waived()).all, 'book');
  });
});
