import picomatch from 'picomatch';

/**
 * Whether a path (relative to the root, forward slashes) is named by one of the patterns. A pattern names its own
 * letters too, so that a file called `plate (2).jpg` can be written as it is called; a folder names what is in it; a
 * pattern that begins with `!` takes away again.
 */
export function matcher(patterns: readonly string[]): (path: string) => boolean {
  const named = either(patterns.filter(pattern => !pattern.startsWith('!')));
  const taken = either(patterns.filter(pattern => pattern.startsWith('!')).map(pattern => pattern.slice(1)));
  return path => {
    const name = path.normalize('NFC'); // one file system writes an umlaut in one character, the next in two
    return named(name) && !taken(name);
  };
}

/** Whether a name is a pattern, which is meant to match what comes; of any other one file or folder is meant. */
export const isPattern = (name: string): boolean => /[*?[\]{}()!]/.test(name);

function either(patterns: readonly string[]): (name: string) => boolean {
  const plain = patterns.map(tidy);
  const literal = new Set(plain);
  // flags: a name may hold the end of a line
  const options = { dot: true, nonegate: true, flags: 's' };
  const globs = plain.map(pattern => picomatch([pattern, `${pattern}/**`], options));
  return name =>
    literal.has(name) || plain.some(p => name.startsWith(`${p}/`)) || globs.some(glob => glob(name));
}

const tidy = (pattern: string) =>
  pattern
    .replace(/^(\.\/)+/, '')
    .replace(/\/+$/, '')
    .replace(/^\.?$/, '**')
    .normalize('NFC');
