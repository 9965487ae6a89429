import path from 'node:path';
import type { Placement } from '../../book/layouts';
import { jpegKeepsInks, kindOf, type LayoutKind, shows, takes } from '../../layout';
import type { RemedyEncoding, RemedyFormat } from '../../shared/remedy';
import { pngWouldDo } from '../format';
import { resultName } from './names';
import type { Asked } from './types';

type Line = Pick<Placement, 'file' | 'line'>;

/** Which lines of layouts place a picture, or would: they decide which format a result can have. */
export interface Lines {
  /** Those that are to place the picture's result. */
  of(asked: Pick<Asked, 'path' | 'link'>): readonly Line[];
  /** Those that place this file (absolute) already. */
  at(output: string): readonly Line[];
}

/**
 * @param placements by the picture's path relative to the root
 * @param realRoot the book's root, links resolved
 * @param relink the lines are to place the results
 * @param earlierOf paths of earlier results of a picture
 */
export const linesIn = (
  placements: ReadonlyMap<string, readonly Line[]>,
  realRoot: string,
  relink: boolean,
  earlierOf: (asked: Pick<Asked, 'path' | 'link'>) => readonly string[],
): Lines => ({
  of: asked =>
    relink
      ? [asked.path, asked.link, ...earlierOf(asked)].flatMap(name =>
          name === null ? [] : (placements.get(name) ?? []),
        )
      : [],
  at: output => placements.get(path.relative(realRoot, output).split(path.sep).join('/')) ?? [],
});

/** A file as a layout places it. */
export interface Placed {
  /** Relative to the root. */
  path: string;
  /** It stores inks. */
  inks: boolean;
}

/**
 * Why a line that places one file is not to place its result, and what to do; null: it is. A line that places a TIFF
 * is taken at its word where the result can be nothing else: its tool is another than the usual one.
 */
export function unplaceable(kind: LayoutKind, from: Placed, to: Placed): string | null {
  if (isTiff(from.path) && isTiff(to.path)) return null;
  const stays = `"${from.path}" stays on the page`;
  const otherwise = `convert it to another encoding, or place "${to.path}" yourself where your tool takes it.`;
  if (!takes(kind, to.path)) {
    const what = isTiff(to.path) ? 'TIFF' : `"${path.posix.extname(to.path)}"`;
    if (!to.inks)
      return `${stays}: ${shows(kind)} no ${what}. Ask for PNG ("--as png"), or for no format: then it is one that can be placed.`;
    return jpegKeepsInks(kind)
      ? `${stays}: ${shows(kind)} no ${what}. Ask for JPEG ("--as jpeg"), which rounds the tones anew, ${otherwise}`
      : `${stays}: ${shows(kind)} no ${what}, and nothing else that holds black ink alone. So ${otherwise}`;
  }
  if (!to.inks || from.inks || jpegKeepsInks(kind)) return null;
  return `${stays}: ${shows(kind)} a JPEG of inks in other colours than are stored, so that black ink alone would be lost. So ${otherwise}`;
}

/** Why a result is a PNG where it would be a TIFF, as a sentence ends: the first line that can place no TIFF; null: none. */
export function needsPng(lines: readonly Line[], placed: readonly Line[]): string | null {
  const [line] = lines;
  if (line) return `${shows(kindOf(line.file)!)} no TIFF, and ${line.file}:${line.line} is to place it`;
  if (placed.length) return `${placed[0].file}:${placed[0].line} places it so`;
  return null;
}

/**
 * What a person should know before a result is made beside a picture and lines of layouts are to place it, which
 * place the picture: a format that they want, or that they cannot place it.
 * @param made the result as it would be without them
 */
export function placingWords(
  lines: readonly Line[],
  source: Placed,
  made: { format: RemedyFormat; to: RemedyEncoding },
): string[] {
  const inks = made.to === 'black-only';
  const why = needsPng(lines, []);
  if (pngWouldDo(made) && why)
    return [`Where the layouts are to place the result, it is a PNG instead: ${why}.`];
  const { dir, base } = path.posix.parse(source.path);
  const result = { path: path.posix.join(dir, resultName(base, made.format, made.to)), inks };
  const refusals = new Map<string, Line[]>();
  for (const line of lines) {
    const refusal = unplaceable(kindOf(line.file)!, source, result);
    if (refusal) refusals.set(refusal, [...(refusals.get(refusal) ?? []), line]);
  }
  return [...refusals].map(([refusal, [first, ...others]]) => {
    const more = others.length ? ` and ${others.length} more` : '';
    return `${first.file}:${first.line}${more} could not place the result. ${refusal}`;
  });
}

const isTiff = (file: string) => /\.tiff?$/i.test(file);
