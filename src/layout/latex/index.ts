import { Mapped } from '../mapped';
import { type Draft, looksLikePicture, plainDraft } from '../reference';
import type { Include, Inherited, LayoutSize, PlacingMacro } from '../types';
import { type Group, Groups } from './groups';
import { liveText } from './live';
import { type Definition, definitionAt } from './macros';
import { graphicsSize, type Measures, pageMeasures, texLength } from './measures';
import { latexPath } from './path';

export interface LatexText {
  drafts: Draft[];
  includes: Include[];
  isMain: boolean;
  passesOn: Inherited;
}

const COMMAND = /\\([a-zA-Z@]+)|\}/g;
/** Texts that come with LaTeX and are taken in by name. From memory. */
const OF_LATEX = new Set(['glyphtounicode', 'epsf', 'random', 'xy']);
const INCLUDES = new Set(['input', 'include', 'subfile', 'usepackage', 'RequirePackage']);
const IMPORTS = new Set([
  'import',
  'subimport',
  'includefrom',
  'subincludefrom',
  'inputfrom',
  'subinputfrom',
]);
const GRAPHICS = new Set([
  'includegraphics',
  'adjustincludegraphics',
  'adjincludegraphics',
  'includesvg',
  'pgfimage',
]);
/** Environments with a width of their own: which of their mandatory arguments says it. */
const BOXES: Record<string, number> = {
  minipage: 0,
  subfigure: 0,
  subtable: 0,
  column: 0,
  wrapfigure: 1,
  wraptable: 1,
};
/** Macros that put their argument into a box: the argument that says its width, and the one that is put in. */
const BOX_MACROS: Record<string, [width: number, content: number]> = {
  parbox: [0, 1],
  subcaptionbox: [1, 2],
  resizebox: [-1, 2],
  scalebox: [-1, 1],
};

/**
 * The pictures of a LaTeX text. Parsers at hand refuse a text with a brace too few, as every text has while it is
 * typed, so this scan takes what it can make out; linear time. `inherited`: what the text that includes it has said.
 */
export function latexText(source: string, inherited: Inherited = {}, textWidth?: number): LatexText {
  return new Scan(liveText(source), inherited, textWidth).run();
}

class Scan {
  private readonly groups: Groups;
  private readonly drafts: Draft[] = [];
  private readonly includes: Include[] = [];
  private readonly macros: Map<string, PlacingMacro>;
  private folders: readonly string[];
  private isMain = false;
  private page: Measures;
  /** Boxes round the place that is read: their width, and where they end if that is a brace. */
  private readonly boxes: { environment: string; until: number; width?: number }[] = [];
  private definition: (Definition & { name: string }) | null = null;
  private defaults: [string, string][] = [];

  constructor(
    private readonly text: string,
    inherited: Inherited,
    private readonly fixedWidth: number | undefined,
  ) {
    this.groups = new Groups(text);
    this.macros = new Map(inherited.macros);
    this.folders = inherited.folders ?? [];
    this.page = { textwidth: inherited.textWidth };
    this.settle({});
  }

  run(): LatexText {
    COMMAND.lastIndex = 0;
    const pattern = new RegExp(COMMAND);
    for (let found = pattern.exec(this.text); found; found = pattern.exec(this.text)) {
      const { index, 1: name } = found;
      if (this.definition && index >= this.definition.body.to) this.definition = null;
      while (this.boxes.length && this.boxes.at(-1)!.until <= index) this.boxes.pop();
      if (name) this.command(name, index + found[0].length);
    }
    const { textwidth } = this.page;
    return {
      drafts: this.drafts,
      includes: this.includes,
      isMain: this.isMain,
      passesOn: { folders: this.folders, macros: this.macros, ...(textwidth && { textWidth: textwidth }) },
    };
  }

  private command(name: string, at: number): void {
    const { groups } = this;
    const macro = this.macros.get(name);
    const definition = definitionAt(groups, name, at);
    if (definition) this.definition = definition;
    else if (macro && !this.definition) this.useOf(macro, at);
    else if (GRAPHICS.has(name)) this.graphics(name, at);
    else if (name === 'begin' || name === 'end') this.environment(name, at);
    else if (Object.hasOwn(BOX_MACROS, name)) this.boxMacro(name, at);
    else if (INCLUDES.has(name) || IMPORTS.has(name)) this.include(name, at);
    else this.setting(name, at);
  }

  private graphics(command: string, at: number): void {
    const { groups, text } = this;
    let next = text[at] === '*' ? at + 1 : at;
    const first = groups.brackets(next);
    if (first) next = first.to + 1;
    // the old form has two corners in brackets, and crops to them
    const second = first && groups.brackets(next);
    if (second) next = second.to + 1;
    const options = first && !second ? groups.options(first) : [];
    const path = groups.braces(next);
    if (!path) return;
    const size = second ? null : graphicsSize([...this.defaults, ...options], this.measures());
    const defined = this.definition && this.placing(this.definition, path, size);
    if (defined) this.macros.set(this.definition!.name, defined);
    else {
      const named = command === 'includesvg' && !/\.svg\s*$/i.test(text.slice(path.from, path.to));
      this.place(path, size, named ? { after: '.svg' } : {});
    }
  }

  /** `\begin{overpic}[width=..]{file}`, boxes with a width, columns. */
  private environment(command: string, at: number): void {
    const { groups, text } = this;
    const group = groups.braces(at);
    if (!group) return;
    const environment = text.slice(group.from, group.to).trim();
    if (command === 'end') {
      if (this.boxes.at(-1)?.environment === environment) this.boxes.pop();
      return;
    }
    const next = group.to + 1;
    if (/^[Oo]verpic$/.test(environment)) this.graphics(environment, next);
    else if (environment === 'document') this.isMain = true;
    else if (environment === 'multicols') {
      const columns = this.number(groups.braces(next));
      const { linewidth } = this.measures();
      const width = linewidth && columns ? (linewidth - (columns - 1) * COLUMN_SEP) / columns : undefined;
      this.boxes.push({ environment, until: Number.POSITIVE_INFINITY, width });
    } else if (Object.hasOwn(BOXES, environment)) {
      const width = this.argument(next, BOXES[environment]);
      this.boxes.push({
        environment,
        until: Number.POSITIVE_INFINITY,
        width: width ? texLength(text.slice(width.from, width.to), this.measures()) : undefined,
      });
    } else if (/^(figure|table)\*$/.test(environment))
      this.boxes.push({ environment, until: Number.POSITIVE_INFINITY, width: this.page.textwidth });
    else if (/^tabular/.test(environment))
      this.boxes.push({ environment, until: Number.POSITIVE_INFINITY, width: undefined });
  }

  private boxMacro(name: string, at: number): void {
    const [widthAt, contentAt] = BOX_MACROS[name];
    const width = widthAt < 0 ? null : this.argument(at, widthAt);
    const content = this.argument(at, contentAt);
    if (content)
      this.boxes.push({
        environment: '',
        until: content.to,
        width: width ? texLength(this.text.slice(width.from, width.to), this.measures()) : undefined,
      });
  }

  private include(name: string, at: number): void {
    const { groups, text } = this;
    const options = groups.brackets(at);
    const group = groups.braces(options ? options.to + 1 : at);
    if (!group) return;
    const written = text.slice(group.from, group.to).trim();
    if (name === 'usepackage' || name === 'RequirePackage') {
      if (written === 'geometry' && options) this.settle(Object.fromEntries(groups.options(options)));
      for (const style of written.split(','))
        this.includes.push({ path: `${style.trim()}.sty`, start: at, optional: true });
      return;
    }
    const second = IMPORTS.has(name) ? groups.braces(group.to + 1) : null;
    const path = latexPath(second ? written + text.slice(second.from, second.to) : written);
    this.includes.push({
      ...{ path: /\.[a-z]{2,5}$/i.test(path) ? path : `${path}.tex`, start: at },
      ...(OF_LATEX.has(path) && { optional: true }),
    });
  }

  private setting(name: string, at: number): void {
    const { groups, text } = this;
    const textOf = (group: Group | null) => (group ? text.slice(group.from, group.to).trim() : '');
    if (name === 'documentclass') {
      this.isMain = true;
      const options = groups.brackets(at);
      if (options) this.settle(Object.fromEntries(groups.options(options)));
      const own = textOf(groups.braces(options ? options.to + 1 : at));
      this.includes.push({ path: `${own}.cls`, start: at, optional: true });
    } else if (name === 'geometry' || name === 'newgeometry') {
      const options = groups.braces(at);
      if (options) this.settle(Object.fromEntries(groups.options(options)));
    } else if (name === 'setlength') {
      const which = groups.braces(at);
      const value = which && groups.braces(which.to + 1);
      if (textOf(which) === '\\textwidth' && value) this.settle({ textwidth: textOf(value) });
    } else if (name === 'setkeys' && textOf(groups.braces(at)) === 'Gin') {
      const options = groups.braces(groups.braces(at)!.to + 1);
      if (options) this.defaults = groups.options(options);
    } else if (name === 'graphicspath' || name === 'svgpath') {
      const list = groups.braces(at);
      if (!list) return;
      const folders: string[] = [];
      for (
        let next = list.from, group = groups.braces(next);
        group && group.to < list.to;
        group = groups.braces(next)
      ) {
        folders.push(latexPath(textOf(group)));
        next = group.to + 1;
      }
      this.folders = folders;
    } else if (!this.definition) this.unknown(at);
  }

  /** A macro that nobody knows may be given a picture all the same. */
  private unknown(at: number): void {
    const options = this.groups.brackets(at);
    for (
      let group = this.groups.braces(options ? options.to + 1 : at);
      group;
      group = this.text[group.to + 1] === '{' ? this.groups.braces(group.to + 1) : null
    ) {
      const written = group.to - group.from < 1000 ? this.text.slice(group.from, group.to).trim() : '';
      if (looksLikePicture(written) && !/[\\{}]/.test(written)) this.place(group, null, { certain: false });
    }
  }

  private useOf({ arguments: kinds, picture, before, after, size }: PlacingMacro, at: number): void {
    let next = at;
    for (const [i, kind] of [...kinds].entries()) {
      if (kind === 's') {
        if (this.text[next] === '*') next++;
        continue;
      }
      const group = kind === 'o' ? this.groups.brackets(next) : this.groups.braces(next);
      if (i === picture && group) this.place(group, size, { before, after });
      if (group) next = group.to + 1;
      else if (kind !== 'o') return;
    }
  }

  private place({ from, to }: Group, size: LayoutSize | null, more: Parameters<typeof plainDraft>[3]): void {
    const written = Mapped.of(this.text, from, to).trim();
    const quoted = /^"[^"]*"$/.test(written.text);
    const inner = quoted ? written.slice(1, -1) : written;
    if (!inner.text) return;
    const draft = plainDraft(inner, ['latex'], size, { folders: this.folders, ...more });
    this.drafts.push({ ...draft, path: latexPath(inner.text) });
  }

  /** A macro whose body places `#1`, with what stands round it. */
  private placing(definition: Definition, path: Group, size: LayoutSize | null): PlacingMacro | null {
    const match = /^([^#]*)#(\d)([^#]*)$/.exec(this.text.slice(path.from, path.to).trim());
    if (!match || Number(match[2]) > definition.arguments.length) return null;
    const [, before, number, after] = match;
    return {
      arguments: definition.arguments,
      picture: Number(number) - 1,
      before: latexPath(before),
      after: latexPath(after),
      size,
    };
  }

  /** The mandatory argument of this number, from 0; those in brackets are passed over. */
  private argument(at: number, number: number): Group | null {
    let next = at;
    for (let left = number; ; left--) {
      for (let options = this.groups.brackets(next); options; options = this.groups.brackets(next))
        next = options.to + 1;
      const group = this.groups.braces(next);
      if (!group || left === 0) return group;
      next = group.to + 1;
    }
  }

  private number(group: Group | null): number {
    return group ? Number(this.text.slice(group.from, group.to)) || 0 : 0;
  }

  private settle(options: Record<string, string>): void {
    this.page = pageMeasures(Object.entries(options), this.page);
    if (this.fixedWidth) this.page.textwidth = this.fixedWidth;
    if ('twocolumn' in options) this.twoColumns = true;
  }

  private twoColumns = false;

  private measures(): Measures {
    const { textwidth } = this.page;
    const columnwidth = textwidth && this.twoColumns ? (textwidth - COLUMN_SEP) / 2 : textwidth;
    const box = this.boxes.at(-1);
    return { ...this.page, columnwidth, linewidth: box ? box.width : columnwidth };
  }
}

/** Between columns, mm: 10 pt, LaTeX's own. */
const COLUMN_SEP = 3.51;
