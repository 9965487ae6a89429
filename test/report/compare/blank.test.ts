import assert from 'node:assert/strict';
import { blankPlaces, isBroken, isMissing, leavesBlank, wasThere } from '../../../src/report/compare/blank';
import { brokenFacts } from '../../book/support/facts';
import { picture } from '../text/support';
import { blank, change, comparison, page } from './support';

const gone = (path: string) => change('added', path, [page(picture(path), blank(path))]);
const never = change('added', 'never', [page(null, blank('never'))]);
const broken = change('changed', 'broken', [
  page(picture('broken'), picture('broken', [], brokenFacts('truncated'))),
]);
const fine = change('changed', 'fine', [page(picture('fine'), picture('fine'))]);

describe('places that stay blank', () => {
  it('are those of pictures that are not there, not of such as cannot be read', () => {
    assert.deepEqual([gone('a'), never, broken, fine].map(leavesBlank), [true, true, false, false]);
  });

  it('are not left by a link to nothing that no layout places, which cannot be read', () => {
    const astray = picture('link', [], brokenFacts('missing'));
    assert.deepEqual([isMissing(astray), isBroken(astray)], [false, true]);
  });

  it('had a picture before, or never had one', () => {
    assert.deepEqual([gone('a'), never].map(wasThere), [true, false]);
  });

  it('are told in one sentence, of many pictures a few by name', () => {
    assert.equal(blankPlaces(comparison([broken, fine])), '');
    assert.match(blankPlaces(comparison([gone('a'), fine])), /^a is placed .* its place stays blank: /);
    const many = [...'abcdefg'].map(gone);
    assert.match(blankPlaces(comparison(many)), /^a, b, c, d, e and 2 more are .* their places stay blank: /);
  });
});
