// no-unit-test: test/layout/markdown/index.test.ts reads style sheets by it
import { parse } from 'yaml';

const FRONT_MATTER = /^\uFEFF?---[ \t]*\r?\n((?:[^\n]*\n)*?)(?:---|\.\.\.)[ \t]*(?:\r?\n|$)/;
/** Nobody writes more by hand. */
const LONGEST = 65536;
/** `format`, its name, its keys: further down no tool looks. */
const DEEPEST = 3;

/** The front matter of a Markdown text with its marks; '' where it has none. */
export const frontMatterOf = (source: string): string => FRONT_MATTER.exec(source)?.[0] ?? '';

/** Style sheets that front matter names under `css`, at the top or under a format, as written. */
export function stylesIn(front: string): string[] {
  const text = FRONT_MATTER.exec(front)?.[1] ?? '';
  if (text.length > LONGEST || !/css/.test(text)) return [];
  try {
    return stylesUnder(parse(text), DEEPEST);
  } catch {
    return []; // no YAML: whoever makes the book of it is told so
  }
}

function stylesUnder(value: unknown, deep: number): string[] {
  if (!value || typeof value !== 'object' || Array.isArray(value)) return [];
  return Object.entries(value).flatMap(([key, said]) => {
    if (key === 'css') return [said].flat().filter(one => typeof one === 'string');
    return deep > 1 ? stylesUnder(said, deep - 1) : [];
  });
}
