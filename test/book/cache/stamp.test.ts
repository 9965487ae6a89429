import assert from 'node:assert/strict';
import { isSettled, sameStamp } from '../../../src/book/cache/stamp';

describe('stamps', () => {
  const second = 1_000_000_000n;
  const at = (mtime: bigint, ctime = mtime) => ({ size: 1, mtime, ctime, inode: 1n });

  it('are trusted only when the last change was well before the reading', () => {
    assert.ok(isSettled(at(5n * second + 1n), 6n * second));
    assert.ok(!isSettled(at(5n * second + 1n), 5n * second + 2n));
    assert.ok(!isSettled(at(5n * second + 1n, 6n * second + 1n), 6n * second + 2n));
    assert.ok(!isSettled(at(9n * second), 5n * second), 'a time to come');
  });

  it('are trusted later where the clock counts whole seconds', () => {
    assert.ok(!isSettled(at(5n * second), 6n * second));
    assert.ok(isSettled(at(5n * second), 8n * second));
  });

  it('differ in any of size, times and inode', () => {
    assert.ok(sameStamp(at(1n), at(1n)));
    assert.ok(!sameStamp(at(1n), at(1n, 2n)));
    assert.ok(!sameStamp(at(1n), { ...at(1n), size: 2 }));
  });
});
