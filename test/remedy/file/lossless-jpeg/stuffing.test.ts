import assert from 'node:assert/strict';
import { scanEnd, seen, unstuffed } from '../../../../src/remedy/file/lossless-jpeg/stuffing';
import { Unusual } from '../../../../src/remedy/file/lossless-jpeg/unusual';
import { Workspace } from '../../../../src/remedy/file/lossless-jpeg/workspace';

const END = [0xff, 0xd9];
const read = (...bytes: number[]) => {
  const scan = unstuffed(Buffer.from(bytes), 0, new Workspace());
  const { bytes: data, ends } = seen(scan);
  assert.ok(
    data.subarray(scan.length).every(byte => byte === 0),
    'zeros behind the end',
  );
  return { data: [...data.subarray(0, scan.length)], ends: [...ends], next: scan.next };
};

describe('coded data in a file', () => {
  it('have a zero behind each 0xFF, which goes', () => {
    const data = [1, 0xff, 2, 0xff, 0xff, 0];
    assert.deepEqual(read(1, 0xff, 0, 2, 0xff, 0, 0xff, 0, 0, ...END), { data, ends: [6], next: 9 });
  });

  it('end at the first marker that is no restart, with its fill bytes', () => {
    assert.deepEqual(read(7, 0xff, 0xff, ...END), { data: [7], ends: [1], next: 3 });
    assert.equal(scanEnd(Buffer.from([9, 0xff, 0, 0xff, 0xd0, 5, 0xff, 0xc4, 0]), 0), 6);
  });

  it('are parted by restart markers in their order', () => {
    const parts = Array.from({ length: 10 }, (_, i) => [i, 0xff, 0xd0 + (i % 8)]).flat();
    const { data, ends } = read(...parts, 10, ...END);
    assert.deepEqual(data, [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    assert.deepEqual(ends, [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    assert.throws(() => read(1, 0xff, 0xd1, 2, ...END), Unusual);
  });

  it('that break off are none', () => {
    for (const bytes of [[], [1, 2], [1, 0xff], [1, 0xff, 0]]) assert.throws(() => read(...bytes), Unusual);
  });
});
