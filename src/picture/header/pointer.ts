/** A large-file pointer (git-lfs specification, version 1): the text that stands in a checkout for an unfetched file. */
export interface Pointer {
  /** SHA-256 of the real content, in hex. */
  oid: string;
  /** Length of the real content in bytes. */
  size: number;
}

/** A pointer is shorter than 1024 bytes by its specification. */
export const LONGEST_POINTER = 1024;

/** @returns null where the text is no pointer */
export function parsePointer(text: string): Pointer | null {
  if (text.length >= LONGEST_POINTER || !text.startsWith('version https://git-lfs.github.com/spec/'))
    return null;
  const oid = /^oid sha256:([0-9a-f]{64})$/m.exec(text);
  const size = /^size (\d{1,15})$/m.exec(text);
  return oid && size ? { oid: oid[1], size: Number(size[1]) } : null;
}
