import assert from 'node:assert/strict';
import { Quiet } from '../../src/editor/quiet';

/** The waits that changes `[ms, file]` lead to, none of which comes to its end between them. */
const waits = (changes: readonly [number, string | null][]) => {
  const quiet = new Quiet();
  return changes.map(([now, file]) => quiet.changed(now, file));
};

describe('waiting for more changes', () => {
  it('is next to none for one picture that is saved while all is calm', () => {
    assert.deepEqual(waits([[1000, 'a.jpg']]), [5]);
  });

  it('is none for the files of one save, however it is done', () => {
    const save: [number, string][] = [
      [1000, 'a.jpg.part'],
      [1001, 'a.jpg'],
      [1002, 'a.jpg'],
    ];
    assert.deepEqual(waits(save), [5, 4, 3]);
  });

  it('is a quiet time once there are many', () => {
    const many = Array.from({ length: 5 }, (_, n): [number, string] => [1000, `${n}.jpg`]);
    assert.deepEqual(waits(many), [5, 5, 5, 120, 120]);
  });

  it('is a quiet time for the next piece of a file that is being written, and for what follows closely', () => {
    const quiet = new Quiet();
    quiet.changed(1000, 'a.jpg');
    quiet.over();
    assert.equal(quiet.changed(1100, 'a.jpg'), 120);
    quiet.over();
    assert.equal(quiet.changed(1599, 'b.jpg'), 120);
    quiet.over();
    assert.equal(quiet.changed(2099, 'c.jpg'), 5);
  });

  it('is a quiet time where nobody knows what changed', () => {
    assert.deepEqual(waits([[1000, null]]), [120]);
  });

  it('ends, however long the changes go on', () => {
    const quiet = new Quiet();
    for (let now = 0; now < 2000; now += 50) {
      const wait = quiet.changed(now, `${now}.jpg`);
      assert.ok(now + wait <= 2000, `${now} + ${wait}`);
    }
    assert.equal(quiet.changed(2100, 'last.jpg'), 0);
  });
});
