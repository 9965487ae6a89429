import assert from 'node:assert/strict';
import { applyEdits, parse } from 'jsonc-parser';
import { listingMeant } from '../../../src/book/settings/list-meant';

const listed = (text: string, picture = 'sepia.jpg', meant: 'toned' | 'colour' = 'toned') =>
  applyEdits(text, listingMeant(text, picture, meant));

describe('a picture listed as toned', () => {
  it('comes after those that are listed, in any way of listing them', () => {
    const toned = (text: string) => parse(listed(text)).intent.toned;
    assert.deepEqual(toned('{}'), ['sepia.jpg']);
    assert.deepEqual(toned('{ "intent": { "grey": "a.jpg" } }'), ['sepia.jpg']);
    assert.deepEqual(toned('{ "intent": { "toned": "b.jpg" } }'), ['b.jpg', 'sepia.jpg']);
    assert.deepEqual(toned('{ "intent": { "toned": ["b.jpg", "c.jpg"] } }'), ['b.jpg', 'c.jpg', 'sepia.jpg']);
    const group = { pictures: 'b.jpg', reference: 'b.jpg' };
    assert.deepEqual(toned(JSON.stringify({ intent: { toned: group } })), [group, 'sepia.jpg']);
  });

  it('or as one in colour comes after those', () => {
    const text = '{ "intent": { "toned": "b.jpg", "colour": ["c.jpg"] } }';
    assert.deepEqual(parse(listed(text, 'a.jpg', 'colour')).intent, {
      toned: 'b.jpg',
      colour: ['c.jpg', 'a.jpg'],
    });
  });

  it('changes nothing else, comments and line ends neither', () => {
    const text = '{\r\n  // who prints it\r\n  "process": "inkjet"\r\n}\r\n';
    const after = listed(text);
    assert.match(after, /\/\/ who prints it\r\n {2}"process": "inkjet",?\r\n/);
    assert.doesNotMatch(after, /[^\r]\n/);
  });

  it('is never one that is taken away by its name', () =>
    assert.deepEqual(parse(listed('{}', '!odd.jpg')).intent.toned, ['./!odd.jpg']));

  it('is not written into what cannot be read', () =>
    assert.throws(() => listingMeant('{ "process": ', 'a.jpg', 'toned'), /Put it right first/));
});
