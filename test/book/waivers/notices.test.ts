import assert from 'node:assert/strict';
import { applyWaivers, waiveAll } from '../../../src/book/waivers/apply';
import { waiverNotices } from '../../../src/book/waivers/notices';
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
    assert.deepEqual(
      told({ show: 'count', stale: waivers }).map(notice =>
        notice.replace(/: x on .*is said/, '... is said'),
      ),
      [
        '1 finding is waived by w.json and does not count.',
        'w.json has 1 waiver of no finding any more... is said of it has changed.',
      ],
    ));

  it('is which are stale, and which have no reason', () => {
    assert.match(
      told({ stale: waivers })[1],
      /^w\.json has 1 waiver of no finding any more: x on a\.tif\. .*--waive" takes them out\.$/,
    );
    assert.match(told({ waivers })[1], /gives no reason for 1 waiver: x on a\.tif\.$/);
    assert.equal(told({ waivers: [{ ...waivers[0], reason: 'Known.' }] }).length, 1);
  });

  it('is nothing where there are none', () =>
    assert.deepEqual(waiverNotices(book, { file: 'w.json', waivers: [], stale: [], show: true }), []));
});
