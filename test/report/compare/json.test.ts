import assert from 'node:assert/strict';
import { comparisonJson } from '../../../src/report/compare/json';
import { compareReportSchema } from '../../../src/report/compare/schema';
import { strictErrors } from '../support';
import { finding, picture } from '../text/support';
import { change, comparison, findings, page } from './support';

describe('a comparison as JSON', () => {
  const told = comparison(
    [
      change(
        'changed',
        'a.tif',
        [
          page(picture('a.tif'), picture('a.tif', [], { sha256: '1', bits: 16 }), {
            findings: findings({
              new: [finding('x', 'warning', 'w')],
              unchanged: [finding('y', 'note', 'n')],
            }),
            matches: [
              {
                target: 'book',
                verdict: 'matches',
                rules: [],
                waived: false,
                distance: 1 / 3,
                probability: 0.1,
              },
            ],
          }),
        ],
        { bytes: { before: 3000, after: 6000 } },
      ),
      change('mode', 'b.tif', [], { modes: { before: '100644', after: '100755' } }),
      change('deleted', 'c.tif', [page(picture('c.tif'), null)]),
    ],
    {
      others: [{ path: 'o.tif', page: 1, findings: findings({ ended: [finding('z', 'error', 'e')] }) }],
      advice: [{ target: null, before: 'black-only', after: 'rgb-neutral', pictures: ['p.tif'] }],
    },
  );

  it('is as its schema says, numbers rounded', () => {
    const report = JSON.parse(comparisonJson(told));
    assert.equal(strictErrors(compareReportSchema, report), '');
    assert.deepEqual(
      report.changes[0].pages[0].differences.map((each: { of: string }) => each.of),
      ['nothing', 'channels', 'bytes'],
    );
    assert.equal(report.changes[0].pages[0].matches[0].distance, 0.333333);
    assert.deepEqual(
      report.changes[0].pages[0].findings.new.map((f: { rule: string }) => f.rule),
      ['x'],
    );
    assert.deepEqual([report.changes[1].pages, report.changes[2].pages[0].after], [[], null]);
  });

  it('has a line a change, so that two can be compared', () => {
    const lines = comparisonJson(told).split('\n');
    assert.equal(lines.filter(line => line.startsWith('{"kind":')).length, 3);
  });
});
