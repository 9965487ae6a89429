import assert from 'node:assert/strict';
import { applyWaivers, waiveAll } from '../../../src/book/waivers/apply';
import { staleWords, waiverNotices } from '../../../src/book/waivers/notices';
import { finding, picture, report } from '../../report/text/support';

describe('what is told of waivers', () => {
  const book = report([
    picture('a.tif', [finding('x', 'warning', 'Odd.')], { sha256: 'a'.repeat(64), page: 2 }),
  ]);
  const { waivers } = waiveAll(book, [], []);
  const { report: waived } = applyWaivers(book, waivers);
  const told = (more: Partial<Parameters<typeof waiverNotices>[1]>) =>
    waiverNotices(waived, { file: 'w.json', waivers: [], stale: [], show: false, ...more });

  it('is how many there are, and on demand which', () => {
    assert.deepEqual(told({}), [
      '1 finding is waived by w.json and does not count; --show-waived tells them.',
    ]);
    assert.deepEqual(told({ show: true }), [
      '1 finding is waived by w.json and does not count:',
      'Waived on a.tif (page 2), warning x: Odd.',
    ]);
  });

  it('says no more than how many where they are told elsewhere', () =>
    assert.deepEqual(told({ show: 'count', stale: waivers }), [
      '1 finding is waived by w.json and does not count.',
      'w.json has 1 waiver of no finding: x on a.tif (what is said has changed).',
    ]));

  it('is which are stale, and which have no reason', () => {
    assert.match(
      told({ stale: waivers })[1],
      /^w\.json has 1 waiver of no finding: x on a\.tif \(.*\)\. .*--waive" takes them out\.$/,
    );
    assert.match(told({ waivers })[1], /gives no reason for 1 waiver: x on a\.tif\.$/);
    assert.equal(told({ waivers: [{ ...waivers[0], reason: 'Known.' }] }).length, 1);
  });

  it('is why each is of no finding', () => {
    const [a, b] = ['a'.repeat(64), 'b'.repeat(64)];
    const blank = { reason: 'missing', text: '' } as const;
    const broken = { reason: 'truncated', text: '' } as const;
    const book = report([
      picture('a.tif', [], { sha256: a }),
      picture('blank.tif', [], { sha256: '', unreadable: blank }),
      picture('broken.tif', [], { sha256: 'c'.repeat(64), unreadable: broken }),
    ]);
    const why = (name: string | null, ...content: string[]) =>
      staleWords('w.json', [{ rule: 'x', picture: name, content, value: {} }], book).match(/\((.*)\)\.$/)![1];
    assert.equal(why('a.tif', a), 'what is said has changed');
    assert.equal(why('old name.tif', a), 'what is said has changed', 'one that moved');
    assert.equal(why('a.tif', b), 'exported again');
    assert.equal(why('gone.tif', b), 'not in the book any more');
    assert.equal(why('blank.tif', b), 'not in the book any more');
    assert.equal(why('broken.tif', b), 'cannot be read now');
    assert.equal(why(null, a), 'what is said has changed');
    assert.match(why(null, a, b), /^of its pictures some were exported again or taken out/);
  });

  it('is nothing where there are none', () =>
    assert.deepEqual(waiverNotices(book, { file: 'w.json', waivers: [], stale: [], show: true }), []));
});
