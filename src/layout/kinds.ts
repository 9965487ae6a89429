import type { LayoutKind } from './types';

const kinds: Record<string, LayoutKind> = {
  md: 'markdown',
  markdown: 'markdown',
  mdown: 'markdown',
  mkd: 'markdown',
  qmd: 'markdown',
  rmd: 'markdown',
  html: 'html',
  htm: 'html',
  xhtml: 'html',
  css: 'css',
  tex: 'latex',
  ltx: 'latex',
  latex: 'latex',
  sty: 'latex',
  cls: 'latex',
  typ: 'typst',
  adoc: 'asciidoc',
  asciidoc: 'asciidoc',
  asc: 'asciidoc',
};

export const layoutExtensions: readonly string[] = Object.keys(kinds);

const ABOUT = /^(?:readme|changelog|changes|contributing|licen[cs]e|code_of_conduct)\b/i;

/** The language of a layout source by its name; null for what is none. */
export function kindOf(path: string): LayoutKind | null {
  const name = path.slice(path.lastIndexOf('/') + 1);
  const dot = name.lastIndexOf('.');
  const extension = name.slice(dot + 1).toLowerCase();
  if (dot < 1 || !Object.hasOwn(kinds, extension)) return null;
  return kinds[extension];
}

/** Whether a source of this kind can tell others where their pictures lie, or how large they are. */
export const handsOn = (kind: LayoutKind): boolean =>
  kind === 'latex' || kind === 'asciidoc' || kind === 'typst' || kind === 'css';

/** A file that tells of its folder, such as a readme: it lays out no book unless somebody says so. */
export const isAbout = (path: string): boolean => ABOUT.test(path.slice(path.lastIndexOf('/') + 1));
