// no-unit-test: types only
export type LayoutKind = 'markdown' | 'html' | 'css' | 'latex' | 'typst' | 'asciidoc';

/** How a text is written in a language: what has to be escaped, and how. Innermost of several first. */
export type Writing =
  | 'url'
  | 'url-ascii'
  | 'srcset'
  | 'markdown-bare'
  | 'markdown-angle'
  | 'html-double'
  | 'html-single'
  | 'html-bare'
  | 'css-bare'
  | 'css-double'
  | 'css-single'
  | 'latex'
  | 'typst'
  | 'asciidoc';

/** Printed size as a layout says it: mm, or a scale of the picture's own size (its pixels at its ppi). */
export interface LayoutSize {
  width?: number;
  height?: number;
  scale?: number;
  /** With both edges given, the picture keeps its shape and fits between them; else it fills them. */
  fits?: true;
}

/** A picture that a layout source places. Offsets count UTF-16 units of the text, as editors do. */
export interface Reference {
  /** As the language means it: escapes, entities and percent codes undone. */
  path: string;
  /** The same with its percent codes, where they could be part of a file's name. */
  literal: string | null;
  /** Exactly the text of the path, without quotes, query or fragment. */
  start: number;
  end: number;
  /** Of `start`, from 1. */
  line: number;
  column: number;
  /** Where in the text it is placed, if not where its path stands: Markdown may have that further down. */
  placed?: number;
  /** Null where the source says no size, or one that cannot be known from it. */
  size: LayoutSize | null;
  /**
   * False where the source only names a file and nobody can tell without running it what becomes of it: it places a
   * picture if there is one of this name.
   */
  certain: boolean;
  /** What the source puts before and after the path, such as an image folder or a macro's extension. */
  before: string;
  after: string;
  /** Folders in which the layout's tool looks, beside its usual ones. */
  folders: readonly string[];
  writing: readonly Writing[];
}

/** What a source hands on to those it includes; Typst: functions to those that take them in. */
export interface Inherited {
  /** mm. */
  textWidth?: number;
  /** LaTeX: `\graphicspath`. AsciiDoc: `imagesdir`. */
  folders?: readonly string[];
  /** HTML, Markdown: the style sheets that a page links or names. */
  styles?: readonly string[];
  /** LaTeX: macros that place the picture they are given, by name. */
  macros?: ReadonlyMap<string, PlacingMacro>;
  /** Typst: functions that place the picture they are given, by name. */
  functions?: ReadonlyMap<string, PlacingFunction>;
}

/** `#let plate(name) = image("plates/" + name, width: 80%)` */
export interface PlacingFunction {
  /** Which of its arguments is the picture: of those without a name, from 0, or by its name. */
  picture: number | string;
  before: string;
  after: string;
  size: LayoutSize | null;
  /** From the folder of the text that calls it to that of the text that defines it; empty for the same. */
  folder: string;
}

/** `\newcommand{\plate}[2]{\includegraphics[width=#2]{plates/#1.jpg}}` */
export interface PlacingMacro {
  /** One letter an argument: `m` in braces, `o` in brackets and may be missing, `s` a star that may be missing. */
  arguments: string;
  /** Which of them is the picture, from 0. */
  picture: number;
  before: string;
  after: string;
  size: LayoutSize | null;
}

export interface Include {
  /** As written; an extension that was left out is added. */
  path: string;
  /** Where in the text it is taken in, in UTF-16 units. */
  start: number;
  /** Typst: only what it defines is. */
  namesOnly?: true;
  /** It need not be there, or comes with the tool as a rule. */
  optional?: true;
}

export interface Source {
  references: Reference[];
  /** Other sources that this one takes in, in the order of the text. */
  includes: Include[];
  /** HTML, Markdown: style sheets that the page links or names, as written. */
  styles: string[];
  /** The source a tool is started on: LaTeX with a document class. Others cannot be told from parts. */
  isMain: boolean;
  passesOn: Inherited;
  /** Lines, from 1, that place pictures nobody can name without running the text. */
  unread: number[];
}
