// no-unit-test: part of the tests
import { execFileSync } from 'node:child_process';
import { need } from '../tools/need';

/** Debian's mate-backgrounds: photographs of 1.3 to 5 megapixels. Read where they lie, nothing of them is kept. */
export const photograph = (name: string) =>
  need(`/usr/share/backgrounds/mate/nature/${name}.jpg`, 'mate-backgrounds');

/** Runs ImageMagick. A string is split at its blanks; file names with blanks go in as lists. */
export const convert = (...args: (string | string[])[]): Buffer =>
  execFileSync(
    need('/usr/bin/convert', 'imagemagick'),
    ['-limit', 'thread', '1', ...args.flatMap(arg => (typeof arg === 'string' ? arg.split(' ') : arg))],
    { maxBuffer: 2 ** 27 },
  );
