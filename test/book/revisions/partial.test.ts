import assert from 'node:assert/strict';
import { reportOfChanged } from '../../../src/book/revisions/partial';
import { noSettings } from '../../../src/book/settings/settings';
import { verdict } from '../../../src/report/text/begin';
import { brokenFacts, greyFacts } from '../support/facts';

const sha = '0'.repeat(64);
const remedied = { from: sha, to: 'rgb-toned', toned: true, fitted: false } as const;
const searched = { notEntered: [], ignored: 0, idleIgnore: [] };

describe('a report of what changed', () => {
  it('counts in its heading, its sums and its text the same pictures: those that are judged', async () => {
    const report = await reportOfChanged(
      {
        changed: [
          { path: 'a-toned.png', facts: [greyFacts('1'.repeat(64), { encoding: 'rgb-toned', remedied })] },
          { path: 'a.png', facts: [greyFacts(sha, { encoding: 'rgb-toned' })] },
          { path: 'blank.png', facts: [brokenFacts('missing')] },
          { path: 'two.tif', facts: [1, 2].map(page => greyFacts('2'.repeat(64), { page })) },
        ],
        ...{ others: null, unchanged: 0, which: 'staged' },
      },
      noSettings,
      searched,
    );
    assert.equal(report.pictures[1].replacedBy, 'a-toned.png');
    assert.equal(report.summary.pictures, 4);
    assert.equal(report.notices[0], 'Only what is staged was checked: 4 pictures.');
    assert.match(verdict(report), / of 4 pictures want attention/);
  });
});
