import assert from 'node:assert/strict';
import { byPart, grouped, ofPart, oneByOne, paths } from '../../src/rules/groups';
import { picture } from './support/pictures';

describe('groups', () => {
  it('keep the order in which their keys appear', () =>
    assert.deepEqual(
      grouped([3, 1, 4, 1, 5], n => String(n % 2)),
      [[3, 1, 1, 5], [4]],
    ));
  it("keep the book's own pictures apart from a part, whatever it is called", () => {
    const book = [picture('rgb-neutral'), picture('rgb-neutral', { part: 'null' })];
    assert.equal(byPart(book).length, 2);
    assert.deepEqual(book.map(ofPart), ['', ' of part "null"']);
  });
  it('name a file of many pages once', () => {
    const page = picture('rgb-neutral', { path: 'a.tif' });
    assert.deepEqual(paths([page, { ...page }]), ['a.tif']);
  });

  it('are told of one by one while they are few, and what somebody lives with always is', () => {
    const told = (things: string[], waived: string[] = []) =>
      [
        ...oneByOne(things, {
          one: thing => ({ message: thing, data: {} }),
          all: some => ({ message: some.join('+'), data: {} }),
          isWaived: ({ message }) => waived.includes(message),
        }),
      ].map(({ message }) => message);
    assert.deepEqual(told(['a', 'b', 'c']), ['a', 'b', 'c']);
    assert.deepEqual(told(['a', 'b', 'c', 'd']), ['a+b+c+d']);
    assert.deepEqual(told(['a', 'b', 'c', 'd'], ['b']), ['a', 'b', 'c', 'd']);
    assert.deepEqual(told(['a', 'b', 'c', 'd', 'e'], ['b']), ['a+c+d+e', 'b']);
  });
});
