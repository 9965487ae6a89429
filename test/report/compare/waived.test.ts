import assert from 'node:assert/strict';
import { waivedLines, waivedWords } from '../../../src/report/compare/waived';
import type { NewlyWaived } from '../../../src/shared/comparison';
import { finding } from '../text/support';

const waived = (path: string | null, rule: string, reason: string): NewlyWaived => ({
  ...{ path, page: 1 },
  finding: { ...finding(rule, 'warning', ''), reason },
});

describe('what a change waives, in words', () => {
  it('names pictures, rule and reason, once for all of one reason', () => {
    const some = [
      waived('a.tif', 'x', 'As agreed'),
      waived('b.tif', 'x', 'As agreed '),
      waived('a.tif', 'y', ''),
      waived(null, 'z', 'So be it'),
    ];
    assert.deepEqual(waivedLines({ waived: some }), [
      'a.tif and b.tif: warning x, because: As agreed',
      'a.tif: warning y, no reason is given',
      'the book: warning z, because: So be it',
    ]);
    assert.equal(waivedWords({ waived: some }), '4 findings are waived by this change.');
    assert.equal(waivedWords({ waived: some.slice(0, 1) }), '1 finding is waived by this change.');
    assert.equal(waivedWords({ waived: [] }), '');
  });

  it('tells as many as fit, and how many more there are', () => {
    const many = Array.from({ length: 40 }, (_, i) => waived(`${i}.tif`, 'x', `Reason ${i}`));
    const lines = waivedLines({ waived: many });
    assert.deepEqual([lines.length, lines.at(-1)], [13, 'and 28 findings more']);
    const [line] = waivedLines({ waived: many.map(each => waived(each.path, 'x', '')) });
    assert.match(line, /11\.tif and 28 more: warning x/);
  });
});
