import assert from 'node:assert/strict';
import { blankPlaces, leavesBlank, wasThere } from '../../../src/report/compare/blank';
import { brokenFacts } from '../../book/support/facts';
import { picture } from '../text/support';
import { change, comparison, page } from './support';

const missing = (path: string) => picture(path, [], brokenFacts('missing'));
const gone = (path: string) => change('added', path, [page(picture(path), missing(path))]);
const never = change('added', 'never', [page(null, missing('never'))]);
const broken = change('changed', 'broken', [
  page(picture('broken'), picture('broken', [], brokenFacts('truncated'))),
]);
const fine = change('changed', 'fine', [page(picture('fine'), picture('fine'))]);

describe('places that stay blank', () => {
  it('are those of pictures that are not there, not of such as cannot be read', () => {
    assert.deepEqual([gone('a'), never, broken, fine].map(leavesBlank), [true, true, false, false]);
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
