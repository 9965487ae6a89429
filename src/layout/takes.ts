import type { LayoutKind } from './types';

/** What the usual tool of a layout's language makes of files, by extension. */
interface Tool {
  /** How a sentence begins on what it cannot place: `browsers show` no TIFF. */
  shows: string;
  places: readonly string[];
  /** The ink values of a JPEG reach the print as they are stored. */
  keepsInks: boolean;
  /** It makes nothing of a book with a file that it cannot place; else it leaves the place blank. */
  stops: boolean;
  /** Nobody makes anything of this language with another tool. */
  alone: boolean;
}

/**
 * Markdown and AsciiDoc become HTML as a rule. Browsers turn ink values into colours of their own (MDN, "Image file type
 * and format guide", for the formats; from memory for the inks).
 */
const browsers: Tool = {
  shows: 'browsers show',
  places: 'jpg jpeg jpe jfif png gif svg webp avif'.split(' '),
  keepsInks: false,
  ...{ stops: false, alone: true },
};
/** These have converters to much else. */
const oftenBrowsers: Tool = { ...browsers, alone: false };

const tools: Record<LayoutKind, Tool> = {
  markdown: oftenBrowsers,
  html: browsers,
  css: browsers,
  asciidoc: oftenBrowsers,
  // pdftex.def of the LaTeX graphics bundle, with epstopdf and svg; a JPEG goes into the PDF as it is. From memory: XeTeX
  // and LuaTeX place these, too
  latex: {
    shows: 'pdfTeX takes',
    places: 'jpg jpeg png pdf eps svg'.split(' '),
    keepsInks: true,
    ...{ stops: true, alone: false },
  },
  // Typst's reference, "image", and version 0.14.2, which places `.jfif` too and puts a JPEG of inks into a PDF as it is
  typst: {
    shows: 'Typst takes',
    places: 'jpg jpeg jfif png gif svg webp pdf'.split(' '),
    keepsInks: true,
    ...{ stops: true, alone: true },
  },
};

/** Whether a kind of layout can place files of this name. */
export const takes = (kind: LayoutKind, path: string): boolean =>
  tools[kind].places.includes(path.slice(path.lastIndexOf('.') + 1).toLowerCase());

/** Whether the ink values of a JPEG reach the print through this kind of layout. */
export const jpegKeepsInks = (kind: LayoutKind): boolean => tools[kind].keepsInks;

/** What is known of the usual tool of a kind of layout. */
export const toolOf = (kind: LayoutKind): Readonly<Tool> => tools[kind];

/** Who shows or takes the pictures of a kind of layout: a sentence goes on with what. */
export const shows = (kind: LayoutKind): string => tools[kind].shows;
