import assert from 'node:assert/strict';
import { missingWaivers } from '../../../src/book/revisions/settings-changes';
import { applyWaivers, waiveAll } from '../../../src/book/waivers/apply';
import { finding, picture, report } from '../../report/text/support';

const odd = () => finding('x', 'warning', 'Odd.');
const hash = (digit: string) => digit.repeat(64);
const book = () =>
  report(
    [
      picture('a.tif', [odd(), finding('n', 'note', 'Note.')], { sha256: hash('a') }),
      picture('b.tif', [finding('y', 'error', 'Bad.')], { sha256: hash('b') }),
      picture('c.tif', [finding('unreadable', 'error', 'Gone.')], { sha256: '' }),
    ],
    { findings: [finding('whole', 'warning', 'All.')] },
  );

describe('waivers', () => {
  it('take findings out of the count and keep them apart, with the reason', () => {
    const { waivers } = waiveAll(book(), [], []);
    waivers[0].reason = 'The house wants it so.';
    const { report: waived, unused } = applyWaivers(book(), waivers);
    assert.deepEqual(unused, []);
    const { errors, warnings, notes, waived: count } = waived.summary;
    assert.deepEqual([errors, warnings, notes, count], [1, 0, 1, 3], 'what was not read still counts');
    assert.deepEqual(waived.findings, []);
    assert.deepEqual(
      waived.waived!.map(({ rule, reason }) => [rule, reason]),
      [['whole', 'The house wants it so.']],
    );
    assert.deepEqual(
      waived.pictures[0].findings.map(f => f.rule),
      ['n'],
    );
    assert.deepEqual(
      waived.pictures[0].waived!.map(f => f.rule),
      ['x'],
    );
  });

  it('stay on a target that is only called otherwise, with their reason, and on no other', () => {
    const told = (name: string, light: 'D50' | 'A' = 'D50') => {
      const about = { ...finding('x', 'warning', 'Odd.'), data: { target: name } };
      const target = { ...picture('a.tif').targets[0], name, light };
      return report([{ ...picture('a.tif', [about], { sha256: hash('a') }), targets: [target] }]);
    };
    const [waiver] = waiveAll(told('book'), [], []).waivers;
    const waivers = [{ ...waiver, reason: 'The house wants it so.' }];
    assert.deepEqual(applyWaivers(told('print'), waivers).unused, []);
    assert.deepEqual(applyWaivers(told('book', 'A'), waivers).unused, [], 'by its name it is the same');
    assert.deepEqual(applyWaivers(told('print', 'A'), waivers).unused, waivers);
    const { on: _, ...byName } = waivers[0];
    assert.deepEqual(applyWaivers(told('print'), [byName]).unused, [byName]);
    const again = waiveAll(told('print'), waivers, []);
    assert.deepEqual([again.added, again.waivers[0].reason], [0, waivers[0].reason]);
    assert.deepEqual(missingWaivers(again.waivers, waivers), []);
  });

  it('are written for every error and warning, sorted; what was not read is named', () => {
    const { waivers, added, unknown } = waiveAll(book(), [], []);
    assert.deepEqual(
      waivers.map(({ picture, rule }) => [picture, rule]),
      [
        [null, 'whole'],
        ['a.tif', 'x'],
        ['b.tif', 'y'],
      ],
    );
    assert.deepEqual([added, unknown], [3, ['c.tif']]);
  });

  it('count findings that are waived now, also where one waiver is of pictures alike to the byte', () => {
    const alike = book();
    const [first] = alike.pictures;
    alike.pictures.push({ ...first, path: 'z.tif', findings: [...first.findings] });
    const { waivers, added } = waiveAll(alike, [], []);
    const { report } = applyWaivers(alike, waivers);
    assert.deepEqual([waivers.length, added, report.summary.waived], [3, 4, 4]);
  });

  it('are the same when they are written again, reasons and all; stale ones go, others may be kept', () => {
    const first = waiveAll(book(), [], []).waivers;
    first[1].reason = 'Known.';
    const stale = { ...first[1], content: [hash('d')], reason: 'Old.' };
    const { report: waived, unused } = applyWaivers(book(), [...first, stale]);
    assert.deepEqual(unused, [stale]);
    const again = waiveAll(waived, [...first, stale], []);
    assert.deepEqual([again.waivers, again.added], [first, 0]);
    assert.equal(waiveAll(waived, [...first, stale], unused).waivers.length, 4);
  });

  it('written anew for the same rule on the same picture have the reason that was given', () => {
    const { waivers } = waiveAll(book(), [], []);
    for (const waiver of waivers) waiver.reason = `Agreed on ${waiver.rule}.`;
    const exported = book();
    exported.pictures[0].facts.sha256 = hash('e');
    const { report: waived, unused } = applyWaivers(exported, waivers);
    assert.equal(unused.length, 1);
    const again = waiveAll(waived, waivers, []);
    assert.deepEqual(
      again.waivers.map(({ rule, content, reason }) => [rule, content[0], reason]),
      [
        ['whole', undefined, 'Agreed on whole.'],
        ['x', hash('e'), 'Agreed on x.'],
        ['y', hash('b'), 'Agreed on y.'],
      ],
    );
  });

  it('of another content waive nothing: a picture exported again is judged again', () => {
    const { waivers } = waiveAll(book(), [], []);
    const exported = book();
    exported.pictures[0].facts.sha256 = hash('e');
    const { report: waived, unused } = applyWaivers(exported, waivers);
    assert.deepEqual(
      waived.pictures[0].findings.map(f => f.rule),
      ['x', 'n'],
    );
    assert.deepEqual(
      unused.map(({ picture }) => picture),
      ['a.tif'],
    );
  });
});
