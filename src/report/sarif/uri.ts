/** A path with forward slashes as a relative URI reference (RFC 3986): every other character that means something there is percent-encoded. */
export const relativeUri = (path: string): string =>
  // a name that is no text on a file system of bytes must not stop the report
  Buffer.from(path).toString().split('/').map(encodeURIComponent).join('/');
