// no-unit-test: test/layout/relink.test.ts writes every language by it
import type { Writing } from './types';

/** How a path is written in each language so that its reader gets it back. */
const writers: Record<Writing, (path: string) => string> = {
  url: path => urlWritten(path, /[\s%?#"<>\\^`{|}\p{Cc}]/gu),
  'url-ascii': path => urlWritten(path, /[\s%?#"<>\\^`{|}\p{Cc}\P{ASCII}]/gu),
  srcset: url => url.replace(/^,+|,+$/g, commas => '%2C'.repeat(commas.length)),
  'markdown-bare': url => url.replace(/[()]/g, '\\$&').replace(ENTITY, '\\&'),
  // spaces may stay there, which is what the brackets are written for
  'markdown-angle': url => url.replace(/(?<=.)%20(?=.)/g, ' ').replace(ENTITY, '\\&'),
  'html-double': value => value.replace(ENTITY, '&amp;').replace(/"/g, '&quot;'),
  'html-single': value => value.replace(ENTITY, '&amp;').replace(/'/g, '&#39;'),
  'html-bare': value =>
    value.replace(ENTITY, '&amp;').replace(/[\s"'=<>`]/g, sign => `&#${sign.charCodeAt(0)};`),
  'css-bare': url => url.replace(/[\s()'"\\]/g, '\\$&'),
  'css-double': url => url.replace(/["\\]/g, '\\$&'),
  'css-single': url => url.replace(/['\\]/g, '\\$&'),
  latex: path => path.replace(/[%#]/g, '\\$&').replace(/~/g, '\\string~'),
  typst: path => path.replace(/["\\]/g, '\\$&'),
  asciidoc: path =>
    path.replace(/[[\]{]/g, sign => ({ '[': '{startsb}', ']': '{endsb}' })[sign] ?? `\\${sign}`),
};

/** What reads like an entity. */
const ENTITY = /&(?=#?\w)/g;

/** A path through all layers, innermost first. */
export const written = (path: string, layers: readonly Writing[]): string =>
  layers.reduce((text, layer) => writers[layer](text), path);

function urlWritten(path: string, signs: RegExp): string {
  // a colon in the first step would make a scheme of what stands before it
  const relative = /^[^/]*:/.test(path) ? `./${path}` : path;
  return relative.replace(signs, sign => encodeURIComponent(sign.replace(/\p{Cs}/u, '\uFFFD')));
}

/**
 * Older LaTeX takes the first dot for that of the extension and stops at a space: braces hold a name together. In
 * quotes it is held already.
 */
export function latexWritten(path: string, quoted: boolean): string {
  const [, stem, extension] = /^(.*?)(\.[^./]*)?$/s.exec(path)!;
  const plain = written(path, ['latex']);
  const parts = stem.slice(stem.lastIndexOf('/') + 1);
  if (quoted || !(/[ ]/.test(stem) || parts.includes('.'))) return plain;
  return `{${written(stem, ['latex'])}}${written(extension ?? '', ['latex'])}`;
}
