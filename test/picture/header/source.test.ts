import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { bufferSource, fileSource, Numbers } from '../../../src/picture/header/source';

const cut = { name: 'UnreadableError', reason: 'truncated' };

describe('source', () => {
  const bytes = Buffer.from(Array.from({ length: 200_000 }, (_, i) => (i * 7) % 251));
  const file = path.join(os.tmpdir(), `source-${process.pid}`);
  let fd: number;

  before(() => {
    fs.writeFileSync(file, bytes);
    fd = fs.openSync(file, 'r');
  });
  after(() => {
    fs.closeSync(fd);
    fs.rmSync(file);
  });

  it('gives the same bytes from a file as from memory, near, far, back again and long', () => {
    const [a, b] = [fileSource(fd, bytes.length), bufferSource(bytes)];
    for (const [at, length] of [
      [0, 4],
      [65_530, 12],
      [199_990, 10],
      [3, 5],
      [10, 150_000],
      [200_000, 0],
    ])
      assert.ok(a.bytes(at, length).equals(b.bytes(at, length)), `${at}+${length}`);
  });

  it('refuses what lies outside the file, whatever the numbers', () => {
    for (const source of [fileSource(fd, bytes.length), bufferSource(bytes)])
      for (const [at, length] of [
        [199_999, 2],
        [-1, 4],
        [0, -4],
        [Number.NaN, 1],
        [2 ** 60, 4],
        [Number.POSITIVE_INFINITY, 0],
      ])
        assert.throws(() => source.bytes(at, length), cut, `${at}+${length}`);
  });

  it('keeps bytes it has given when it reads on', () => {
    const source = fileSource(fd, bytes.length);
    const first = source.bytes(0, 8);
    source.bytes(150_000, 8);
    assert.ok(first.equals(bytes.subarray(0, 8)));
  });

  it('says that a file is cut which shrank after it was opened', () => {
    assert.throws(() => fileSource(fd, bytes.length + 10).bytes(bytes.length, 10), cut);
  });

  it('reads whole numbers in either order', () => {
    const source = bufferSource(Buffer.from([1, 2, 3, 4, 5, 6, 7, 8]));
    const [big, little] = [new Numbers(source, true), new Numbers(source, false)];
    assert.deepEqual([big.u16(0), big.u32(0), big.u64(0)], [0x0102, 0x01020304, Number(0x0102030405060708n)]);
    assert.deepEqual([little.u16(0), little.u32(0)], [0x0201, 0x04030201]);
    assert.equal(big.u8(7), 8);
  });
});
