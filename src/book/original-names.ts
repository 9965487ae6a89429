// no-unit-test: test/remedy/plan/names.test.ts holds it against the names that results get
import path from 'node:path';
import type { RemedyEncoding } from '../shared/remedy';
import { namesPicture } from './discovery/extensions';

const ENCODINGS: RemedyEncoding[] = ['rgb-neutral', 'single-channel', 'black-only', 'rgb-toned'];

/** What the picture is called that this is the result of, beside it, by its name; null where it is not called so. */
export function originalName(file: string): string | null {
  const { stem, ext } = parted(file);
  const encoding = ENCODINGS.find(each => stem.endsWith(`.${each}`));
  return encoding ? pictureName(stem.slice(0, -encoding.length - 1), ext) : null;
}

/** What the picture can be called whose result this is in a folder of its own, where a picture that was right has its own name. */
export function mirroredNames(file: string): string[] {
  const { stem, ext } = parted(file);
  return [...new Set([pictureName(stem, ext), file])];
}

const pictureName = (stem: string, ext: string): string => (namesPicture(stem) ? stem : stem + ext);

function parted(file: string): { stem: string; ext: string } {
  const ext = path.posix.extname(file);
  return { stem: file.slice(0, file.length - ext.length), ext };
}
