import assert from 'node:assert/strict';
import { waiveAll } from '../../../src/book/waivers/apply';
import { withWaivers } from '../../../src/editor/checker/waived';
import { finding, picture, report } from '../../report/text/support';

describe('waivers in the editor', () => {
  const stained = finding('residual-chroma', 'warning', 'A stain.');
  const book = report([
    picture('a.tif', [stained], { sha256: 'a'.repeat(64) }),
    picture('b.tif', [stained], { sha256: 'b'.repeat(64) }),
  ]);
  const { waivers } = waiveAll(report([book.pictures[0]]), [], []);

  it('take away what is waived, and say once how many', () => {
    const seen = withWaivers(book, {
      waivers: [{ ...waivers[0], reason: 'It is meant.' }],
      file: 'w.json',
      problems: [],
    });
    assert.deepEqual(
      seen.report.pictures.map(({ findings }) => findings.length),
      [0, 1],
    );
    assert.equal(seen.report.summary.warnings, 1);
    assert.deepEqual(seen.notices, ['1 finding is waived by w.json and does not count.']);
    assert.deepEqual(seen.report.notices, seen.notices);
  });

  it('change nothing where there are none', () =>
    assert.deepEqual(withWaivers(book, { waivers: [], file: null, problems: [] }), {
      report: book,
      notices: [],
    }));
});
