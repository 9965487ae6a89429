import assert from 'node:assert/strict';
import { waivedSince } from '../../../src/book/comparison/waived-since';
import { splitWaived } from '../../../src/book/waivers/apply';
import { waiverOf } from '../../../src/book/waivers/key';
import { finding, picture } from '../../report/text/support';

describe('what a change waives', () => {
  it('is what the waivers are of that came, and not what was waived before', () => {
    const [small, odd, whole] = ['low-resolution', 'mixed-encodings', 'book-rule'].map(rule =>
      finding(rule, 'warning', rule),
    );
    const a = picture('a.tif', [small, odd], { sha256: 'a' });
    const judged = { pictures: [a], findings: [whole] };
    const [old, came, ofBook] = [
      waiverOf(small, a, judged)!,
      waiverOf(odd, a, judged)!,
      waiverOf(whole, null, judged)!,
    ];
    const split = splitWaived(judged, [old, { ...came, reason: 'As agreed' }, ofBook]);
    assert.deepEqual(
      waivedSince([came, ofBook], split).map(each => [each.path, each.finding.rule, each.finding.reason]),
      [
        [null, 'book-rule', ''],
        ['a.tif', 'mixed-encodings', 'As agreed'],
      ],
    );
    assert.deepEqual(waivedSince([], split), []);
  });
});
