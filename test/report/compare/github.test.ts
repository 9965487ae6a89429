import assert from 'node:assert/strict';
import { CAUTION } from '../../../src/report/caution';
import { conditions } from '../../../src/report/compare/conditions';
import { comparisonCommands } from '../../../src/report/compare/github';
import type { PictureReport } from '../../../src/shared/finding';
import { brokenFacts } from '../../book/support/facts';
import { finding, picture } from '../text/support';
import { change, clause, comparison, findings, GROUND, page } from './support';

const place = { folder: 'books/one/', settings: 'books/one/evengrey.json' };

describe('a comparison as workflow commands', () => {
  it('annotates what is new, worst first, also on pictures that did not change, and nothing that was there', () => {
    const changed = page(picture('a,b.tif'), picture('a,b.tif'), {
      findings: findings({
        new: [finding('odd', 'warning', 'It is odd.')],
        ended: [finding('gone', 'error', 'It was wrong.')],
        unchanged: [finding('old', 'error', 'It is wrong still.')],
      }),
    });
    const others = [
      { path: 'c.tif', page: 2, findings: findings({ new: [finding('bad', 'error', 'It is bad.')] }) },
    ];
    const advice = [{ target: null, before: 'black-only', after: 'rgb-neutral', pictures: ['p.tif'] }];
    const compared = comparison([change('changed', 'a,b.tif', [changed])], { others, advice });
    assert.deepEqual(comparisonCommands(compared, place).split('\n'), [
      '::error file=books/one/c.tif,line=1,title=bad::c.tif (page 2): It is bad.',
      '::warning file=books/one/a%2Cb.tif,line=1,title=odd::a,b.tif: It is odd.',
      '::notice title=Evengrey::The advice for p.tif, unchanged itself, is another now: save it as rgb-neutral; before, as black-only.',
      `::notice title=Evengrey::${conditions(compared)[0].replace(/%/g, '%25')}`,
      '1 new warning. 1 picture: 1 changed.',
      'New: 0 errors, 1 warning, 0 notes. Ended: 1 error, 0 warnings, 0 notes. As before: 1 error, 0 warnings, 0 notes.',
      CAUTION,
      '',
    ]);
  });

  it('says once, on the settings, what one finding says of several pictures', () => {
    const split = finding('mixed', 'error', 'They differ.');
    const of = (path: string) =>
      change('changed', path, [page(null, picture(path), { findings: findings({ new: [split] }) })]);
    const both = comparison([of('a'), of('b')]);
    both.head.findings = [split];
    const told = comparisonCommands(both, place);
    assert.equal(told.match(/^::error/gm)!.length, 1);
    assert.match(told, /^::error file=books\/one\/evengrey\.json,line=1,title=mixed::They differ\.\n/);
    assert.match(
      comparisonCommands(both, { ...place, settings: null }),
      /^::error title=mixed::They differ\.\n/,
    );
  });

  it('says so once too where it is new for some of those that it names, and has words of its own', () => {
    const narrowed = finding('tint', 'warning', 'a and b and, as before, 2 others.');
    const of = (path: string) =>
      change('changed', path, [page(null, picture(path), { findings: findings({ new: [narrowed] }) })]);
    const told = comparisonCommands(comparison([of('a'), of('b')]), place);
    assert.deepEqual(told.match(/^::warning.*/gm), [
      '::warning file=books/one/evengrey.json,line=1,title=tint::a and b and, as before, 2 others.',
    ]);
    assert.match(comparisonCommands(comparison([of('a')]), place), /^::warning file=books\/one\/a,/);
  });

  it('stands on the line that places a picture which is not there', () => {
    const missing = {
      ...picture('b.tif', [], brokenFacts('missing')),
      placedAt: [{ file: 'book.html', line: 7, column: 3 }],
    };
    const told = (after: PictureReport) =>
      comparisonCommands(
        comparison([
          change('deleted', 'b.tif', [
            page(picture('b.tif'), after, {
              findings: findings({ new: [finding('unreadable', 'error', 'Blank.')] }),
            }),
          ]),
        ]),
        place,
      ).split('\n')[0];
    assert.equal(told(missing), '::error file=books/one/book.html,line=7,title=unreadable::b.tif: Blank.');
    assert.equal(
      told({ ...missing, facts: brokenFacts('corrupt') }),
      '::error file=books/one/b.tif,line=1,title=unreadable::b.tif: Blank.',
    );
  });

  it('tells what the change itself waives in one notice on the waivers', () => {
    const waived = ['a', 'b'].map((path, i) => ({
      ...{ path, page: 1 },
      finding: { ...finding('x', 'warning', ''), reason: `Reason ${i}` },
    }));
    const told = comparisonCommands(comparison([], { waived }), place).split('\n');
    assert.equal(
      told[0],
      '::notice file=books/one/.evengrey-waivers.json,line=1,title=Evengrey::2 findings are waived by this change.%0Aa: warning x, because: Reason 0%0Ab: warning x, because: Reason 1',
    );
    assert.ok(!comparisonCommands(comparison([]), place).includes('::notice file'));
  });

  it('tells changed settings as notices', () => {
    const told = comparisonCommands(
      comparison([], { settings: { changes: [clause('x: 1, before 2')], forecasts: [] } }),
      place,
    );
    assert.match(told, /^::notice title=Evengrey::The settings changed, .* x: 1, before 2\.\n/);
    const lines = told.trimEnd().split('\n');
    assert.match(lines[1], new RegExp(`^::notice title=Evengrey::.*Forecasts: ${GROUND}\\.$`));
    assert.equal(lines.at(-1), CAUTION);
  });
});
