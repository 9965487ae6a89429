import assert from 'node:assert/strict';
import { isOneTone } from '../../src/rules/one-tone';

/** Equal shares of the area at each of these whole L*. */
function tone(...levels: number[]) {
  const histogram = Array.from({ length: 101 }, (_, L) => levels.filter(v => v === L).length / levels.length);
  return { darkest: Math.min(...levels), lightest: Math.max(...levels), histogram };
}

describe('one tone', () => {
  it('is a blank page, a black one, a tint', () => {
    for (const levels of [[100], [1], [50, 54]]) assert.equal(isOneTone(tone(...levels)), true);
  });
  it('is not what differs by more, however little it is', () => {
    assert.equal(isOneTone(tone(50, 55)), false);
    assert.equal(isOneTone(tone(...Array(90).fill(95), 20)), false);
  });
  it('may hold specks', () => assert.equal(isOneTone(tone(...Array(400).fill(95), 0)), true));
});
