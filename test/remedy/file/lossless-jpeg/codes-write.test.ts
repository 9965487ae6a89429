import assert from 'node:assert/strict';
import { type CodeTables, dcKey, takeCodes } from '../../../../src/remedy/file/lossless-jpeg/codes-read';
import { shortestCodes } from '../../../../src/remedy/file/lossless-jpeg/codes-write';

const frequencies = (by: Record<number, number>) =>
  Uint32Array.from({ length: 256 }, (_, symbol) => by[symbol] ?? 0);

/** Total of bits by plain Huffman coding, without the bound of 16: the sum of all inner nodes' weights. */
function huffmanBits(weights: number[]): number {
  const left = [...weights];
  let sum = 0;
  while (left.length > 1) {
    left.sort((x, y) => y - x);
    const node = left.pop()! + left.pop()!;
    sum += node;
    left.push(node);
  }
  return sum;
}

describe('the shortest codes', () => {
  it('are read back as they were written', () => {
    const used = Object.fromEntries(Array.from({ length: 200 }, (_, i) => [i, (i * i) % 97]));
    const { code, length, counts, symbols } = shortestCodes(frequencies(used));
    const tables: CodeTables = new Map();
    takeCodes(tables, Uint8Array.from([0, ...counts, ...symbols]));
    const read = tables.get(dcKey(0))!.all;
    for (let symbol = 0; symbol < 256; symbol++) {
      assert.equal(length[symbol] > 0, (used[symbol] ?? 0) > 0, `${symbol}`);
      if (length[symbol] > 0)
        assert.equal(read[code[symbol] << (16 - length[symbol])], length[symbol] * 256 + symbol);
    }
    assert.equal(read[0xffff], 0, 'the code of all ones is used');
  });

  it('take as many bits as Huffman coding with the reserved code does', () => {
    const weights = [1, 1, 2, 3, 5, 8, 13, 100, 1000, 1000];
    const { length } = shortestCodes(frequencies({ ...weights }));
    const bits = weights.reduce((sum, weight, symbol) => sum + weight * length[symbol], 0);
    assert.equal(bits, huffmanBits([0, ...weights]));
  });

  it('are 16 bits at most, also where plain Huffman coding wants more', () => {
    const fibonacci = [1, 1];
    while (fibonacci.length < 40) fibonacci.push(fibonacci.at(-1)! + fibonacci.at(-2)!);
    const { length, counts, symbols } = shortestCodes(frequencies({ ...fibonacci }));
    assert.equal(Math.max(...length), 16);
    assert.equal(symbols.length, 40);
    const share = counts.reduce((sum, count, i) => sum + count / 2 ** (i + 1), 0);
    assert.ok(share <= 1 - 2 ** -16, `no prefix codes: ${share}`);
  });

  it('of a single symbol are one bit', () => {
    const { code, length } = shortestCodes(frequencies({ 7: 5 }));
    assert.deepEqual([code[7], length[7]], [0, 1]);
  });
});
