import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { temporaryFolder } from '../../book/support/folder';
import { tiff } from './tiff';

const WIDTH = 96;
const HEIGHT = 64;

/** A tone scale with some structure, 10 to 245. */
const tone = (seed: number) => (x: number, y: number) =>
  Math.round(10 + (235 * ((x * (seed + 3) + y * 5) % WIDTH)) / (WIDTH - 1));

export const pictures = {
  neutral: (seed: number) => tiff(WIDTH, HEIGHT, (x, y) => new Array(3).fill(tone(seed)(x, y))),
  grey: (seed: number) => tiff(WIDTH, HEIGHT, (x, y) => [tone(seed)(x, y)]),
  blackOnly: (seed: number) => tiff(WIDTH, HEIGHT, (x, y) => [0, 0, 0, 255 - tone(seed)(x, y)]),
  colour: () => tiff(WIDTH, HEIGHT, (x, y) => [x * 2, y * 3, 255 - x * 2]),
};

/** A book whose pictures are all alike: nothing to say of any of them. */
export function evenBook(settings: object = { process: 'offset-coated' }, count = 4): string {
  const files: Record<string, string | Uint8Array> = { 'evengrey.json': JSON.stringify(settings) };
  for (let i = 1; i <= count; i++) files[`plates/0${i}.tif`] = pictures.neutral(i);
  return temporaryFolder(files);
}

/** A book with one of everything that can be wrong, names that need care included. */
export function faultyBook(): string {
  const root = temporaryFolder({
    'evengrey.json': `// the spring book
{
  "process": "offset-coated",
  "ignore": "drafts/**",
  "spreads": [["plates/01.tif", "plates/1.tif"]],
  "parts": { "cover": { "pictures": "cover" }, "maps": { "pictures": "maps/**" } }
}
`,
    'cover/front ä.tif': pictures.neutral(9),
    'plates/01.tif': pictures.neutral(1),
    'plates/02.tif': pictures.neutral(2),
    'plates/03.tif': pictures.neutral(3),
    'plates/04 (grey).tif': pictures.grey(4),
    'plates/05.png': pictures.neutral(5),
    'plates/06.tif': pictures.colour(),
    'plates/07.tif': pictures.neutral(7).subarray(0, 900),
    'plates/08.jpg': '',
    'plates/09.jpg': `version https://git-lfs.github.com/spec/v1\noid sha256:${'1'.repeat(64)}\nsize 12345\n`,
    'plates/10.tif': 'no picture at all, but a text',
    'proofs/01.tif': pictures.neutral(1),
    '.gitignore': 'proofs/*.tif\n',
  });
  execFileSync('mkfifo', [path.join(root, 'plates/11.jpg')]);
  fs.symlinkSync('/dev/zero', path.join(root, 'plates/12.png'));
  fs.symlinkSync(temporaryFolder({ 'a.tif': pictures.grey(1) }), path.join(root, 'elsewhere'));
  return root;
}
