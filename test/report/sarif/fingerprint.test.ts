import assert from 'node:assert/strict';
import { fingerprintsOf } from '../../../src/report/sarif/fingerprint';
import { everyFinding } from '../../../src/report/told';
import type { Finding } from '../../../src/shared/finding';
import { finding, picture, report } from '../text/support';

const of = (pictures: ReturnType<typeof picture>[], findings: Finding[] = []) => {
  const told = everyFinding(report(pictures, { findings }));
  const prints = fingerprintsOf(told);
  return new Map(told.map((t, i) => [`${t.picture?.path ?? ''} ${t.finding.message}`, prints[i]]));
};
const x = (message = 'm') => finding('x', 'warning', message);

describe('the fingerprint of a finding', () => {
  it('stays while others come, go and are renamed', () => {
    const alone = of([picture('b.tif', [x()])]).get('b.tif m');
    const among = of([picture('a.tif', [x()]), picture('b.tif', [x()])], [x('all')]);
    assert.equal(among.get('b.tif m'), alone);
    assert.match(alone!, /^[0-9a-f]{64}$/);
  });

  it('stays when its words, its severity and the picture’s content change', () => {
    const before = of([picture('b.tif', [x('2 of 5')])]).get('b.tif 2 of 5');
    const after = of([picture('b.tif', [finding('x', 'error', '3 of 6')], { sha256: '1'.repeat(64) })]);
    assert.equal(after.get('b.tif 3 of 6'), before);
  });

  it('is another for each rule, picture, page, target, and for several alike', () => {
    const on = (target: string) => ({ ...x(target), data: { target } });
    const prints = of(
      [
        picture('a.tif', [x('1'), x('2'), finding('y', 'note', '3'), on('4'), on('5')]),
        picture('b.tif', [x('1')]),
        picture('b.tif', [x('6')], { page: 2 }),
      ],
      [x('7')],
    );
    assert.equal(prints.size, 8);
    assert.equal(new Set(prints.values()).size, 8);
  });

  it('stays when the same is put right on another page, or on another target', () => {
    const two = picture('b.tif', [x('two')], { page: 2 });
    assert.equal(
      of([picture('b.tif', [x('one')]), two]).get('b.tif two'),
      of([picture('b.tif'), two]).get('b.tif two'),
    );
    const on = (target: string) => ({ ...x(target), data: { target } });
    assert.equal(
      of([picture('b.tif', [on('p'), on('q')])]).get('b.tif q'),
      of([picture('b.tif', [on('q')])]).get('b.tif q'),
    );
  });
});
