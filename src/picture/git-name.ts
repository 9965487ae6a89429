// no-unit-test: test/picture/open.test.ts holds it against the names that git itself gives
import { createHash, type Hash } from 'node:crypto';

/**
 * Git's name of a content (the hash of its kind and size, a zero byte, and its bytes), to be given its bytes.
 * @param hash how the repository names, or a name of that kind
 * @param size bytes
 */
export function gitName(hash: string, size: number): Hash {
  const isSha256 = hash === 'sha256' || hash.length === 64;
  return createHash(isSha256 ? 'sha256' : 'sha1').update(`blob ${size}\0`);
}
