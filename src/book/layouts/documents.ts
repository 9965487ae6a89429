// no-unit-test: test/book/layouts/index.test.ts reads whole documents by it
import {
  type Include,
  type Inherited,
  kindOf,
  type LayoutKind,
  lineFinder,
  normalised,
  parseLayout,
  type Reference,
  type Source,
} from '../../layout';
import { typstInheritance } from './typst';

export interface Text {
  /** Relative to the root. */
  path: string;
  kind: LayoutKind;
  text: string;
  around?: true;
}

/** A line that takes in another layout. */
export interface NotAmong {
  /** As it is written; an extension that was left out is added. */
  path: string;
  /** Where it is looked for, relative to the root. */
  places: string[];
  line: number;
  column: number;
}

export interface Parsed {
  references: Reference[];
  /** Of the others those that it takes in, by path. */
  includes: Include[];
  /** Layouts that it takes in and that are none of the others, in the order of their lines. */
  notAmong: NotAmong[];
  /** Folders that the tool may be started in, beside that of the file: those of the documents it is part of. */
  mainFolders: string[];
  /** Lines, from 1, that place pictures nobody can name without running the text. */
  unread: number[];
}

/**
 * The pictures of layout sources, each read with what the documents say that it is part of: LaTeX and AsciiDoc keep
 * folders, widths and macros in one file for all that it includes. In the order of `texts`; gives way by `breathe`.
 */
export async function parseDocuments(
  texts: readonly Text[],
  textWidth: number | undefined,
  breathe: () => Promise<void> | undefined,
): Promise<Parsed[]> {
  const sources: Source[] = [];
  for (const { text, kind } of texts) {
    sources.push(parseLayout(text, kind, { textWidth }));
    await breathe();
  }
  const places = new Map(texts.map(({ path }, at) => [path, at]));
  const taken = sources.map(({ includes }, at) =>
    includes.flatMap(({ path, start, namesOnly = false }) => {
      const to = includedAt(texts[at].path, path, places);
      return to === undefined ? [] : { to, start, namesOnly };
    }),
  );
  const parsed = sources.map(({ references, unread }, at): Parsed => {
    const includes = taken[at].map(({ to, start }) => ({ path: texts[to].path, start }));
    const notAmong = notAmongOf(texts[at], sources[at], places);
    return { references, includes, notAmong, mainFolders: [], unread };
  });
  const told = typstInheritance(
    texts,
    sources,
    taken.map((all, at) => (texts[at].kind === 'typst' ? all : [])),
  );
  for (const [at, { kind, text }] of texts.entries()) {
    if (kind !== 'typst') continue;
    const { references, unread } = parseLayout(text, kind, { textWidth, inherited: told(at) });
    parsed[at] = { ...parsed[at], references, unread };
    await breathe();
  }
  for (const [at, { path, kind, text }] of texts.entries()) {
    if ((kind !== 'html' && kind !== 'markdown') || !sources[at].styles.length) continue;
    const sheets = sources[at].styles.flatMap(
      href => includedAt(path, href.replace(/[?#].*/, ''), places) ?? [],
    );
    const styles = sheets.flatMap(sheet => (texts[sheet].kind === 'css' ? texts[sheet].text : []));
    if (styles.length)
      parsed[at].references = parseLayout(text, kind, { textWidth, inherited: { styles } }).references;
    await breathe();
  }
  const { documents, included } = documentsOf(texts, taken);
  for (const document of documents) {
    const mains = document.filter(at => sources[at].isMain || !included.has(at));
    const mainFolders = [...new Set(mains.map(at => folderOf(texts[at].path)))];
    const inherited = merged([...mains, ...document].map(at => sources[at].passesOn));
    for (const at of document) {
      const { text, kind } = texts[at];
      // AsciiDoc reads from top to bottom: what a file says further down does not hold above
      const told = kind === 'latex' || included.has(at);
      const { references } = told ? parseLayout(text, kind, { textWidth, inherited }) : sources[at];
      parsed[at] = { ...parsed[at], references, mainFolders };
      await breathe();
    }
  }
  return parsed;
}

/** What one of several says, the first that says it; all macros. */
function merged(all: readonly Inherited[]): Inherited {
  return {
    folders: all.find(({ folders }) => folders?.length)?.folders,
    textWidth: all.find(({ textWidth }) => textWidth)?.textWidth,
    macros: new Map(all.flatMap(({ macros }) => [...(macros ?? [])]).reverse()),
  };
}

/** Sources that include each other, of two or more; and those that are included. By their place in `texts`. */
function documentsOf(
  texts: readonly Text[],
  all: readonly (readonly { to: number }[])[],
): { documents: number[][]; included: Set<number> } {
  const neighbours = texts.map((): number[] => []);
  const included = new Set<number>();
  // a style sheet is shared by pages, and joins none of them; Typst is told on its own
  const takesIn = texts.map(({ kind }, at) =>
    kind === 'latex' || kind === 'asciidoc' ? all[at].flatMap(({ to }) => (to === at ? [] : to)) : [],
  );
  const ofTheBook = concerned(texts, takesIn);
  for (const [at, taken] of takesIn.entries())
    for (const to of ofTheBook.has(at) ? taken : []) {
      neighbours[at].push(to);
      neighbours[to].push(at);
      included.add(to);
    }
  const seen = new Set<number>();
  const documents: number[][] = [];
  for (const [start, around] of neighbours.entries()) {
    if (!around.length || seen.has(start)) continue;
    const document: number[] = [];
    seen.add(start);
    for (const queue = [start]; queue.length; ) {
      const at = queue.pop()!;
      document.push(at);
      for (const next of neighbours[at])
        if (!seen.has(next)) {
          seen.add(next);
          queue.push(next);
        }
    }
    documents.push(document.sort((x, y) => x - y));
  }
  return { documents, included };
}

/** The sources that are listed, those that take them in, and what all these take in. By their place in `texts`. */
function concerned(texts: readonly Text[], takesIn: readonly (readonly number[])[]): ReadonlySet<number> {
  const takenInBy = texts.map((): number[] => []);
  for (const [at, taken] of takesIn.entries()) for (const to of taken) takenInBy[to].push(at);
  const listed = texts.flatMap(({ around }, at) => (around ? [] : at));
  return reached(reached(listed, takenInBy), takesIn);
}

function reached(from: Iterable<number>, next: readonly (readonly number[])[]): Set<number> {
  const all = new Set(from);
  // a set that grows is walked to its end
  for (const at of all) for (const to of next[at]) all.add(to);
  return all;
}

/** What only a run of the tool can name is left out, as is what is no layout. */
function notAmongOf(
  { path: from, text }: Text,
  { includes }: Source,
  places: ReadonlyMap<string, number>,
): NotAmong[] {
  const lost = includes.filter(
    ({ path, optional }) =>
      !optional && !CALCULATED.test(path) && kindOf(path) && includedAt(from, path, places) === undefined,
  );
  if (!lost.length) return [];
  const lineOf = lineFinder(text);
  return lost.flatMap(({ path, start }) => {
    const found = placesOf(from, path);
    return found.length ? [{ path, places: found, ...lineOf(start) }] : [];
  });
}

/** A macro, an attribute, an argument, an address. */
const CALCULATED = /[\\{}#|]|:\/\//;

const includedAt = (from: string, path: string, places: ReadonlyMap<string, number>): number | undefined =>
  placesOf(from, path).flatMap(place => places.get(place) ?? [])[0];

/** From the file's own folder, then from those above it: one of them is where the tool is started. */
function placesOf(from: string, path: string): string[] {
  const found: string[] = [];
  for (let folder = folderOf(from); ; folder = folderOf(folder)) {
    found.push(normalised(folder ? `${folder}/${path}` : path) ?? '');
    if (!folder) return found.filter(Boolean);
  }
}

const folderOf = (path: string): string => path.slice(0, Math.max(0, path.lastIndexOf('/')));
