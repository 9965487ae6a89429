import assert from 'node:assert/strict';
import { comparisonText } from '../../../src/report/compare/text';
import { finding, picture, target } from '../text/support';
import { change, comparison, findings, page } from './support';

const style = { width: 80, colour: false };
const text = (...of: Parameters<typeof comparison>) =>
  comparisonText(comparison(...of), { place: { folder: 'hafen/', settings: null } }, style);

describe('a comparison as a text', () => {
  it('tells what is new by rule, once for all that it is said of, then picture by picture, worst first', () => {
    const news = () => findings({ new: [finding('x', 'warning', 'It prints oddly.')] });
    const told = text([
      change('changed', '0.tif', [page(picture('0.tif'), picture('0.tif'))]),
      change('changed', 'a.tif', [page(picture('a.tif'), picture('a.tif'), { findings: news() })]),
      change('added', 'b.tif', [page(null, picture('b.tif'), { findings: news() })], {
        neighbours: { before: 'a.tif', after: null, beside: ['a.tif'] },
      }),
    ]);
    assert.match(told, /\nb\.tif: new, on a spread with a\.tif\n {2}stored as rgb-neutral\n/);
    assert.match(told, /\nWARNING {2}x {2}2 pictures\n {2}a\.tif, b\.tif, of each:\n {4}It prints oddly\.\n/);
    assert.match(
      told,
      /New findings[\s\S]*What changed, worst first[\s\S]*\na\.tif: changed[\s\S]*\n0\.tif: changed/,
    );
  });

  it('counts beside a finding the pictures that it is new for, whomever else it names', () => {
    const shared = {
      ...finding('x', 'warning', 'That leaves b.tif and, as before, 1 other.'),
      data: { convert: ['a.tif', 'b.tif'] },
    };
    const both = (name: string, told: Parameters<typeof findings>[0]) =>
      change('changed', name, [page(picture(name), picture(name), { findings: findings(told) })]);
    const { head } = comparison([]);
    const told = text([both('a.tif', { unchanged: [shared] }), both('b.tif', { new: [shared] })], {
      head: { ...head, findings: [shared] },
    });
    assert.match(told, /\nWARNING {2}x {2}1 picture\n/);
  });

  it('says which book it is', () => {
    assert.match(text([]), /^hafen: Nothing new stands against printing\. No picture of the book changed\./);
  });

  it('lists what the change itself waives, by picture, rule and reason', () => {
    const told = text([], {
      waived: [{ path: 'a.tif', page: 1, finding: { ...finding('x', 'warning', ''), reason: 'As agreed' } }],
    });
    assert.match(
      told,
      /^hafen: 1 finding is waived by this change\. Nothing else that is new stands\nagainst/,
    );
    assert.match(told, /\nWaived by this change\n {2}a\.tif: warning x, because: As agreed\n/);
  });

  it('says of a picture what is waived against it', () => {
    const told = text([
      change('added', 'a.tif', [page(null, picture('a.tif'), { waived: [finding('x', 'warning', '')] })]),
    ]);
    assert.match(told, /\na\.tif: new\n[^\n]+\n[^\n]+\n {2}waived: warning x\n/);
  });

  it('tells in a line what moved to another folder together', () => {
    const moved = ['1', '2', '3'].map(name =>
      change('renamed', `b/${name}`, [page(picture(`a/${name}`), picture(`b/${name}`))], {
        from: `a/${name}`,
      }),
    );
    const told = text(moved);
    assert.match(told, /\n {2}3 pictures moved from a\/ to b\/\n/);
    assert.ok(!told.includes('renamed from'));
  });

  it('names what ended, and pictures that are judged otherwise though they did not change', () => {
    const ended = findings({ ended: [finding('x', 'warning', 'It was odd.')] });
    const told = text(
      [change('changed', 'a.tif', [page(picture('a.tif'), picture('a.tif'), { findings: ended })])],
      {
        others: Array.from({ length: 14 }, (_, i) => ({
          path: `o${i}.tif`,
          page: i + 1,
          findings: findings({ new: [finding('mixed-encodings', 'warning', '')] }),
        })),
      },
    );
    assert.match(told, /Findings that ended\n {2}warning x: a\.tif\n/);
    assert.match(told, /\n {2}o1\.tif \(page 2\): new: warning mixed-encodings\n/);
    assert.match(told, /\n {2}and 2 more\n/);
  });

  it('says why pictures are judged otherwise, also where they only stand elsewhere', () => {
    const twice = findings({ new: [finding('same-picture', 'warning', '')] });
    const [before, after] = ['a.tif', null].map(other => ({ facing: [], after: other, layout: null }));
    const told = text([], {
      others: [{ path: 'o.tif', page: 1, findings: twice }],
      rearranged: [{ path: 'o.tif', before, after }],
    });
    assert.match(told, /\nJudged otherwise, though unchanged themselves: pictures stand elsewhere\n/);
  });

  it('says where something is new only since its waiver fell', () => {
    const fallen = findings({ new: [finding('untagged', 'error', ''), finding('clipped', 'warning', '')] });
    const told = text([], { others: [{ path: 'o.tif', page: 1, findings: fallen, lapsed: ['untagged'] }] });
    assert.match(told, /o\.tif: new: error untagged \(waived before\), warning clipped\n/);
  });

  it('tells pages and targets apart where there are several', () => {
    const two = () => ({ ...picture('a.tif'), targets: [target, { ...target, name: 'dummy' }] });
    const [first] = [two()];
    first.forecasts.push(first.forecasts[0]);
    const told = text([change('changed', 'a.tif', [page(first, first), page(first, first, { page: 2 })])]);
    assert.match(told, /\n {2}\(page 1\)\n {4}stored/);
    assert.match(told, /\n {2}\(page 2\)\n {4}stored/);
    assert.match(told, /as before \(dummy\)/);
  });

  it('lets no name steer the terminal', () =>
    assert.ok(!text([change('mode', 'a\u001b[31m.tif', [])]).includes('\u001b')));
});
