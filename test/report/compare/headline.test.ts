import assert from 'node:assert/strict';
import { byNumber, headline } from '../../../src/report/compare/headline';
import type { Comparison, PictureChange, Stand } from '../../../src/shared/comparison';
import { brokenFacts } from '../../book/support/facts';
import { finding, picture } from '../text/support';
import { blank, change, clause, comparison, findings, page } from './support';

const stand = (facing: string[]): Stand => ({ facing, after: null, layout: null });
const added = (path: string) => change('added', path, [page(null, picture(path))]);
const broken = (path: string, severity: 'note' | 'error' = 'note') =>
  change('changed', path, [
    page(picture(path), picture(path, [], brokenFacts('truncated')), {
      findings: findings({ new: [finding('unreadable', severity, 'It ends.')] }),
    }),
  ]);
const settings = (more: Partial<Comparison['settings']>): Partial<Comparison> => ({
  settings: { changes: [clause('x')], forecasts: [], ...more },
});

describe('the first line of a comparison', () => {
  it('begins with what is new against printing, then tells what changed', () => {
    const bad = page(picture('a'), picture('a'), {
      findings: findings({ new: [finding('x', 'error', 'No.'), finding('y', 'warning', 'No.')] }),
    });
    assert.equal(
      headline(comparison([change('changed', 'a', [bad]), added('b')])),
      '1 new error and 1 new warning. 2 pictures: 1 new and 1 changed.',
    );
    assert.equal(
      headline(comparison([])),
      'Nothing new stands against printing. No picture of the book changed.',
    );
  });

  it('names what cannot be read, whatever the settings make of it, and the rules that were weakened', () => {
    assert.equal(
      headline(
        comparison(
          [broken('a.jpg')],
          settings({ off: ['x', 'y'], weaker: ['facing-difference', 'unreadable'], stricter: ['z'] }),
        ),
      ),
      'No error or warning is new, but a.jpg cannot be read; x and y run no more; facing-difference and unreadable count for less now; z counts for more now. 1 picture: 1 changed; the settings changed.',
    );
    assert.match(
      headline(comparison([broken('a.jpg', 'error')], settings({ off: ['x'] }))),
      /^1 new error; a\.jpg cannot be read; x runs no more\. /,
    );
    const many = ['a', 'b', 'c', 'd'].map(name => broken(name));
    assert.match(headline(comparison(many)), / but a, b, c and 1 more cannot be read\. /);
    assert.match(headline(comparison(many), byNumber), / but 4 pictures cannot be read\. /);
  });

  it('tells what is left out, or placed no more, apart from what is gone', () => {
    const deleted = (path: string, still: PictureChange['still']) =>
      change('deleted', path, [page(picture(path), null)], { still });
    assert.match(
      headline(comparison([deleted('a', null), deleted('b', 'left-out'), deleted('c', 'unplaced')])),
      / 3 pictures: 1 gone, 1 left out of the check and 1 placed no more\.$/,
    );
  });

  it('tells of what is placed and not there that no finding counts, and counts it apart from the others', () => {
    const missing = blank('a');
    const never = (path: string, severity: 'note' | 'error') =>
      change('added', path, [
        page(null, missing, { findings: findings({ new: [finding('unreadable', severity, '')] }) }),
      ]);
    assert.equal(
      headline(comparison([never('b', 'note'), added('c')])),
      'No error or warning is new, but b is placed and not there. 2 pictures: 1 new and 1 placed and not there.',
    );
    assert.match(headline(comparison([never('b', 'error')])), /^1 new error\. 1 picture: /);
  });

  it('tells of settings that say something in vain since', () => {
    const slip = { file: 'evengrey.json', line: 1, column: 1, length: 1, message: 'It names nothing.' };
    const told = (lines: number) => headline(comparison([], { slips: Array(lines).fill(slip) }));
    assert.match(
      told(1),
      /^No error or warning is new, but 1 line of the settings says something in vain now\. /,
    );
    assert.match(told(2), / but 2 lines of the settings say something in vain now\. /);
  });

  it('says in its first line what was not judged, and never that nothing stands against it', () => {
    assert.equal(
      headline(comparison([], { unread: 4 })),
      'No picture of the book changed. Nothing was judged: the 4 pictures were not looked at.',
    );
    assert.match(headline(comparison([], { unread: 1 })), / the picture was not looked at\.$/);
    const read = change('changed', 'a', [page(picture('a'), picture('a'))]);
    assert.equal(
      headline(comparison([read], { unread: 170 })),
      'Nothing new was found. 1 picture: 1 changed. Each looked at by itself; the other 170 pictures were not compared.',
    );
    const { summary } = comparison([]);
    const noted = { ...summary, new: { ...summary.new, notes: 1 } };
    assert.match(
      headline(
        comparison([read], {
          unread: 170,
          summary: { ...noted, changes: { ...summary.changes, changed: 1 } },
        }),
      ),
      /^Nothing new but 1 note was found\. /,
    );
    assert.match(
      headline(comparison([broken('a')], { unread: 170 })),
      /^No error or warning was found that is new, but a cannot be read\. /,
    );
    assert.match(
      headline(comparison([change('mode', 'a', [])], { unread: 2 })),
      /alone\. Nothing was judged:/,
    );
  });

  it('never says that nothing stands against a submodule that nobody looked into', () => {
    assert.equal(
      headline(comparison([], { beyond: ['sm'] })),
      'Nothing new was found. No picture of the book outside of its submodules changed. A submodule changed: pictures in it were not compared.',
    );
    assert.match(
      headline(comparison([added('b')], { beyond: ['sm', 'sn'] })),
      /^Nothing new was found\. 1 picture: 1 new\. 2 submodules changed: pictures in them were not compared\.$/,
    );
  });

  it('tells the settings, the layouts, the waivers and the order of the book where they changed', () => {
    const told = {
      ...settings({ changes: [clause('process: inkjet, before none')] }),
      rearranged: [{ path: 'a', before: stand(['b']), after: stand([]) }],
    };
    assert.match(
      headline(comparison([], told)),
      / No picture of the book changed, but its settings did and 1 picture stands elsewhere\.$/,
    );
    assert.match(
      headline(comparison([added('b')], told)),
      / 1 picture: 1 new; the settings changed and 1 picture stands elsewhere\.$/,
    );
    const others = settings({ changes: [clause('l', 'layouts'), clause('w', 'waivers')] });
    assert.match(headline(comparison([], others)), / changed, but its layouts and waivers did\.$/);
    assert.match(headline(comparison([added('b')], others)), /; the layouts and waivers changed\.$/);
  });

  it('tells a tint that is seen more often by other settings', () => {
    const often = (after: number) =>
      headline(comparison([], settings({ forecasts: [{ target: 'book', pages: 4, before: 0.3, after }] })));
    assert.match(often(0.5), /^No error or warning is new, but a tint is likely to be seen more often\. /);
    assert.match(often(0.2), /^Nothing new stands against printing\. /);
  });

  it('says first what a change waives where nothing else is new', () => {
    const waived = [{ path: 'a', page: 1, finding: { ...finding('x', 'warning', ''), reason: '' } }];
    assert.match(
      headline(comparison([], { waived })),
      /^1 finding is waived by this change\. Nothing else that is new stands against printing\. /,
    );
    assert.match(
      headline(comparison([broken('a')], { waived })),
      /^1 finding is waived by this change\. No other error or warning is new, but a cannot be read\. /,
    );
    assert.match(
      headline(comparison([broken('a', 'error')], { waived })),
      /^1 new error; a cannot be read\. 1 finding is waived by this change\. 1 picture: /,
    );
  });
});
