import type { LayoutKind } from './types';

/** What the usual tool of a layout's language makes of files, by extension. */
interface Tool {
  /** How a sentence begins on what it cannot place: `browsers show` no TIFF. */
  shows: string;
  places: readonly string[];
  /** Those of them whose ink values reach the print as they are stored. */
  keepsInks: readonly string[];
}

/**
 * Markdown and AsciiDoc become HTML as a rule. Browsers turn ink values into colours of their own (MDN, "Image file type
 * and format guide", for the formats; from memory for the inks).
 */
const browsers: Tool = {
  shows: 'browsers show',
  places: 'jpg jpeg jpe jfif png gif svg webp avif'.split(' '),
  keepsInks: [],
};

const tools: Record<LayoutKind, Tool> = {
  markdown: browsers,
  html: browsers,
  css: browsers,
  asciidoc: browsers,
  // pdftex.def of the LaTeX graphics bundle, with epstopdf and svg; a JPEG goes into the PDF as it is. XeTeX and LuaTeX
  // place these, too
  latex: {
    shows: 'pdfTeX takes',
    places: 'jpg jpeg png pdf eps svg'.split(' '),
    keepsInks: 'jpg jpeg pdf eps'.split(' '),
  },
  // Typst's reference, "image"; that ink values of a JPEG do not arrive is its open issue 3781
  typst: { shows: 'Typst takes', places: 'jpg jpeg png gif svg webp pdf'.split(' '), keepsInks: ['pdf'] },
};

const has = (extensions: readonly string[], path: string): boolean =>
  extensions.includes(path.slice(path.lastIndexOf('.') + 1).toLowerCase());

/** Whether a kind of layout can place files of this name. */
export const takes = (kind: LayoutKind, path: string): boolean => has(tools[kind].places, path);

/** Whether the ink values of a file of this name reach the print through this kind of layout. */
export const keepsInks = (kind: LayoutKind, path: string): boolean => has(tools[kind].keepsInks, path);

/** Who shows or takes the pictures of a kind of layout: a sentence goes on with what. */
export const shows = (kind: LayoutKind): string => tools[kind].shows;
