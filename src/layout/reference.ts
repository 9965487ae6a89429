// no-unit-test: test/layout/*/index.test.ts read references made by it
import type { Mapped } from './mapped';
import type { LayoutSize, Reference, Writing } from './types';

/** A reference before its line is known. */
export type Draft = Omit<Reference, 'line' | 'column'>;

type More = Partial<Pick<Draft, 'certain' | 'before' | 'after' | 'folders'>>;

/** A path written as a URL: query and fragment are no part of it, percent codes are undone. Null for none. */
export function urlDraft(
  value: Mapped,
  writing: readonly Writing[],
  size: LayoutSize | null,
  more: More = {},
): Draft | null {
  const trimmed = value.trim();
  const cut = trimmed.text.search(/[?#]/);
  const written = cut === -1 ? trimmed : trimmed.slice(0, cut);
  if (!written.text) return null;
  const path = percentDecoded(written.text);
  const ascii = path !== written.text && /%[89a-f]/i.test(written.text);
  return {
    ...plainDraft(written, [ascii ? 'url-ascii' : 'url', ...writing], size, more),
    path,
    literal: path === written.text ? null : written.text,
  };
}

/** A path written as such. */
export function plainDraft(
  written: Mapped,
  writing: readonly Writing[],
  size: LayoutSize | null,
  { certain = true, before = '', after = '', folders = [] }: More = {},
): Draft {
  const { text, start, end } = written;
  return { path: text, literal: null, start, end, size, certain, before, after, folders, writing };
}

/** Undoes percent codes that are UTF-8; others stay as they are. */
export const percentDecoded = (text: string): string =>
  text.replace(/(?:%[0-9a-f]{2})+/gi, codes => {
    try {
      return decodeURIComponent(codes);
    } catch {
      return codes;
    }
  });

/** A scheme of two letters or more, or a host: nothing of the book's folder. A single letter is a drive. */
export const isRemote = (path: string): boolean =>
  /^(?:[a-z][a-z0-9+.-]+:|[/\\]{2})/i.test(path) && !/^file:/i.test(path);

/** Names that a picture may have. */
const PICTURE_NAME = /[^./\\]\.(?:jpe?g|jpe|jfif|png|tiff?|webp|avif|gif|psd|psb|bmp|hei[cf]|jp2|svg)$/i;

export const looksLikePicture = (text: string): boolean =>
  text.length < 1000 && PICTURE_NAME.test(text) && !/[\r\n]/.test(text);

/** Values of `key: value` lines that may name a picture: nobody knows what a template makes of them. */
export function weakDrafts(lines: Mapped, folders: readonly string[]): Draft[] {
  const drafts: Draft[] = [];
  for (const { index, 0: line, 1: before, 2: value } of lines.text.matchAll(
    /^([^:\n]*:[ \t]*["']?)([^"'\r\n]*)["']?[ \t]*\r?$/gm,
  ))
    if (line && looksLikePicture(value.trim())) {
      const from = index + before.length;
      const written = lines.slice(from, from + value.length).trim();
      drafts.push(plainDraft(written, [], null, { certain: false, folders }));
    }
  return drafts;
}
