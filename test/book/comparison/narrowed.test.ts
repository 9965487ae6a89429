import assert from 'node:assert/strict';
import { narrowedToEnded, narrowedToNew } from '../../../src/book/comparison/narrowed';
import { list } from '../../../src/rules/words';
import type { Finding } from '../../../src/shared/finding';

const twelve = Array.from({ length: 12 }, (_, i) => `p${i}.jpg`);
const shared = (pictures: string[], message: string): Finding => ({
  ...{ rule: 'likely-tint', severity: 'warning', message },
  data: { pictures },
});

describe('a finding about several pictures that is new for some of them', () => {
  it('names these in place of the first of all, and says how many others have it as before', () => {
    const tinted = shared(twelve, `12 pictures print with a tint (${list(twelve)}). Save them.`);
    const told = narrowedToNew([tinted], [{ path: 'p7.jpg', findings: [tinted] }]);
    assert.equal(
      told.get(tinted)?.message,
      '12 pictures print with a tint (p7.jpg and, as before, 11 others). Save them.',
    );
  });

  it('has them at the end of a message that lists none, however they are called', () => {
    const all = shared(['$&.jpg', 'b.jpg'], 'All of them.');
    const told = narrowedToNew([all], [{ path: '$&.jpg', findings: [all] }]);
    assert.equal(told.get(all)?.message, 'All of them. New is $&.jpg; 1 other as before.');
    const listed = shared(['$&.jpg', 'b.jpg'], 'They are $&.jpg and b.jpg.');
    const replaced = narrowedToNew([listed], [{ path: '$&.jpg', findings: [listed] }]);
    assert.equal(replaced.get(listed)?.message, 'They are $&.jpg and, as before, 1 other.');
  });

  it('is told as it is where it is new for all, or for none, or names none of them', () => {
    const both = shared(['a.jpg', 'b.jpg'], 'They are a.jpg and b.jpg.');
    const of = (finding: Finding, ...paths: string[]) =>
      narrowedToNew(
        [finding],
        paths.map(path => ({ path, findings: [finding] })),
      ).size;
    assert.deepEqual([of(both, 'a.jpg', 'b.jpg'), of(both), of(both, 'a.jpg')], [0, 0, 1]);
    assert.equal(of({ ...both, data: { counted: ['a.jpg', 'b.jpg'] } }, 'a.jpg'), 0);
  });

  it('that ended for some is apart from the finding of all, which still is one', () => {
    const both = shared(['a.jpg', 'b.jpg'], 'They are a.jpg and b.jpg.');
    const ended = narrowedToEnded([both], [{ path: 'a.jpg', findings: [both] }]).get(both);
    assert.deepEqual(ended, both);
    assert.notEqual(ended, both);
  });
});
