// no-unit-test: part of the tests
import { type LayoutKind, type ParseOptions, references } from '../../../src/layout';

/** The paths that a text places, in its order; those that it only names in brackets. */
export function paths(text: string, kind: LayoutKind, options?: ParseOptions): string[] {
  return references(text, kind, options).map(({ path, certain }) => (certain ? path : `(${path})`));
}

/** `path: width x height`, mm to one decimal. */
export function sizes(text: string, kind: LayoutKind, options?: ParseOptions): string[] {
  return references(text, kind, options).map(({ path, size }) => {
    if (!size) return `${path}: unknown`;
    const { width, height, scale, fits } = size;
    const edge = (mm?: number) => (mm === undefined ? '-' : String(Math.round(mm * 10) / 10));
    return `${path}: ${edge(width)} x ${edge(height)}${scale ? ` scale ${scale}` : ''}${fits ? ' fits' : ''}`;
  });
}

/** What stands in the text where a reference says its path is. */
export const written = (text: string, kind: LayoutKind): string[] =>
  references(text, kind).map(({ start, end }) => text.slice(start, end));
