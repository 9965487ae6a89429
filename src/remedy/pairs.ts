/** How often each pair of bytes comes that stand at the same place. Four are taken at a time where they lie so. */
export class Pairs {
  private readonly found = new Uint32Array(65536);
  /** Neighbours are mostly equal: counted apart, the one need not wait for the other. */
  private readonly more = new Uint32Array(65536);

  /** @param other as long as `one` */
  add(one: Uint8Array, other: Uint8Array): void {
    let i = 0;
    if (one.byteOffset % 4 === 0 && other.byteOffset % 4 === 0) {
      const words = one.length >> 2;
      this.addWords(fours(one, words), fours(other, words));
      i = words * 4;
    }
    for (; i < one.length; i++) this.found[(one[i] << 8) | other[i]]++;
  }

  private addWords(one: Uint32Array, other: Uint32Array): void {
    const { found, more } = this;
    for (let i = 0; i < one.length; i++) {
      const a = one[i];
      const b = other[i];
      found[((a & 0xff) << 8) | (b & 0xff)]++;
      more[(a & 0xff00) | ((b >>> 8) & 0xff)]++;
      found[((a >>> 8) & 0xff00) | ((b >>> 16) & 0xff)]++;
      more[((a >>> 16) & 0xff00) | (b >>> 24)]++;
    }
  }

  /** By `one` x 256 + `other`. */
  counts(): Uint32Array {
    return this.found.map((count, pair) => count + this.more[pair]);
  }
}

const fours = ({ buffer, byteOffset }: Uint8Array, words: number) =>
  new Uint32Array(buffer, byteOffset, words);
