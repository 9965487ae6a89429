import assert from 'node:assert/strict';
import { blocksOf, sharedSentences } from '../../../src/report/text/blocks';
import type { Severity } from '../../../src/shared/finding';
import { finding, picture, report } from './support';

describe('findings by rule', () => {
  it('come worst first, then what concerns most', () => {
    const blocks = blocksOf(
      report(
        [
          picture('a.jpg', [finding('untagged', 'note', 'N.')]),
          picture('b.jpg', [finding('ink-total', 'warning', 'W.')]),
          picture('c.jpg', [
            finding('mixed-encodings', 'warning', 'X.'),
            finding('unreadable', 'error', 'E.'),
          ]),
          picture('d.jpg', [finding('mixed-encodings', 'warning', 'Y.')]),
        ],
        { findings: [finding('likely-tint', 'note', 'B.')] },
      ),
    );
    assert.deepEqual(
      blocks.map(block => [block.severity, block.rule, block.count, block.book.length]),
      [
        ['error', 'unreadable', 1, 0],
        ['warning', 'mixed-encodings', 2, 0],
        ['warning', 'ink-total', 1, 0],
        ['note', 'likely-tint', 0, 1],
        ['note', 'untagged', 1, 0],
      ],
    );
  });

  it('say one thing once for all pictures it is said of', () => {
    const same = finding('untagged', 'note', 'The same.');
    const [block] = blocksOf(
      report([picture('a.jpg', [same]), picture('b.tif', [same]), picture('b.tif', [same], { page: 2 })]),
    );
    assert.deepEqual(block.entries, [
      { message: 'The same.', pictures: ['a.jpg', 'b.tif', 'b.tif (page 2)'], shares: [] },
    ]);
  });

  it('count a picture once, on however many targets', () => {
    const twice = [1, 2].map(n => finding('ink-total', 'warning', `On target ${n}.`));
    assert.equal(blocksOf(report([picture('a.jpg', twice)]))[0].count, 1);
  });

  it('count the pictures that a finding about the book asks to be changed, too; a note asks for nothing', () => {
    const together = (severity: Severity) => ({
      ...finding('likely-tint', severity, 'All.'),
      data: { pictures: ['b.jpg', 'c.jpg'] },
    });
    const book = ['a.jpg', 'b.jpg', 'c.jpg', 'd.jpg'].map(name =>
      picture(name, name < 'c' ? [finding('likely-tint', 'warning', 'One.')] : []),
    );
    const blocks = blocksOf(report(book, { findings: [together('warning'), together('note')] }));
    assert.deepEqual(
      blocks.map(({ severity, count }) => [severity, count]),
      [
        ['warning', 3],
        ['note', 0],
      ],
    );
  });

  it('find the sentences that all begin with', () => {
    assert.equal(sharedSentences(['All alike. One. Do this.', 'All alike. Two. Do that.']), 'All alike. ');
    assert.equal(sharedSentences(['A b.c d. One.', 'A b.c d. Two.']), 'A b.c d. ');
    assert.equal(sharedSentences(['Alone. Here.']), '');
    assert.equal(sharedSentences(['One.', 'Two.']), '');
  });
});
