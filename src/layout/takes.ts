// no-unit-test: test/book/layouts/relink-all.test.ts asks it
import type { LayoutKind } from './types';

/** What each kind of layout is known to show, by extension. HTML and what becomes HTML: as browsers do. */
const web = 'jpg jpeg jpe jfif png gif svg webp avif'.split(' ');
const known: Record<LayoutKind, readonly string[]> = {
  markdown: web,
  html: web,
  css: web,
  asciidoc: web,
  latex: 'jpg jpeg png pdf eps svg'.split(' '),
  typst: 'jpg jpeg png gif svg webp pdf'.split(' '),
};

/** Whether a kind of layout shows files of this name. */
export const takes = (kind: LayoutKind, path: string): boolean =>
  known[kind].includes(path.slice(path.lastIndexOf('.') + 1).toLowerCase());
