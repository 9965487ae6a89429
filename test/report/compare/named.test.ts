import assert from 'node:assert/strict';
import { apartAtNames } from '../../../src/report/compare/named';
import { finding } from '../text/support';
import { change, comparison, findings } from './support';

const names = (text: string, ...paths: string[]) =>
  apartAtNames(comparison(paths.map(path => change('mode', path, []))))(text)
    .filter(({ isName }) => isName)
    .map(piece => piece.text);

describe('the names in a sentence', () => {
  it('are those of the comparison, and the rest is words', () => {
    const apart = apartAtNames(comparison([change('renamed', 'b.tif', [], { from: 'a.tif' })]));
    assert.deepEqual(apart('renamed from a.tif, and b.tif.'), [
      { text: 'renamed from ', isName: false },
      { text: 'a.tif', isName: true },
      { text: ', and ', isName: false },
      { text: 'b.tif', isName: true },
      { text: '.', isName: false },
    ]);
    assert.deepEqual(apartAtNames(comparison([]))('a.tif'), [{ text: 'a.tif', isName: false }]);
  });

  it('stand by themselves, and are as long as can be', () => {
    assert.deepEqual(names('x/a.tif and a.tif and ba.tif and a.tif.bak', 'a.tif', 'x/a.tif'), [
      'x/a.tif',
      'a.tif',
    ]);
    assert.deepEqual(names('between a b.tif and b.tif', 'a b.tif', 'b.tif'), ['a b.tif', 'b.tif']);
    assert.deepEqual(names('as (a+b).tif (page 2): it', '(a+b).tif'), ['(a+b).tif'], 'no pattern');
    assert.deepEqual(names('a picture', 'a'), [], 'which could be any word');
    assert.deepEqual(
      names('a spread names "a.tif", and a.tif', 'a.tif'),
      ['a.tif'],
      'not in quotation marks',
    );
  });

  it('may hold any sign that a file may be called by', () => {
    for (const sign of '!"#$%&\'()*+,-.:;<=>?@[\\]^_`{|}~ ü…') {
      const name = `plate${sign}1.tif`;
      assert.deepEqual(names(`between ${name} and others`, name), [name]);
    }
  });

  it('are also those that a finding about the book names', () => {
    const shared = { ...finding('x', 'warning', ''), data: { groups: [{ pictures: ['c.tif'] }] } };
    const { head } = comparison([]);
    const apart = apartAtNames(
      comparison([], { head: { ...head, findings: [shared] }, book: findings({ new: [shared] }) }),
    );
    assert.deepEqual(apart('c.tif')[0], { text: 'c.tif', isName: true });
  });
});
