// no-unit-test: test/remedy/relinking/follow.test.ts has settings read and rewritten by it
import fs from 'node:fs/promises';
import path from 'node:path';
import { type Node, parseTree } from 'jsonc-parser';
import { fileText } from '../../book/layouts/encoding';
import { replaceText, unwritable, type WritableText } from '../../book/layouts/replace-text';
import { SETTINGS_FILE } from '../../book/settings/load';
import { lineFinder } from '../../layout/lines';
import type { Relinked, RelinkedLine } from '../../shared/conversion';

/** Keys of the settings under which pictures are named, and the one that names layouts. */
const NAMING = {
  pictures: ['pictures', 'ignore', 'parts', 'intent', 'placements', 'spreads'],
  layouts: ['layouts'],
};

/** What names in the settings are of. */
export type Named = keyof typeof NAMING;

/** `evengrey.json` of a book, as it is written. */
export interface NamesText extends WritableText {
  text: string;
}

/** A name or a pattern in it. */
export interface Name {
  word: string;
  /** As it stands between its quotation marks. */
  written: string;
  start: number;
  line: number;
  column: number;
}

/** Names and patterns that say one thing together: a spread, a part, the keys of `placements`. */
export interface NameList {
  /** Of the settings, at the top level. */
  key: string;
  names: Name[];
}

/** @param open the text as an editor has it open; null where there is no such file */
export async function readNames(root: string, open?: string): Promise<NamesText | null> {
  const file = path.join(root, SETTINGS_FILE);
  const bytes = await fs.readFile(file).catch(() => null);
  if (!bytes) return null;
  const { text, encode } = fileText(bytes);
  return { file, bytes, encode, text: open ?? text };
}

/** Everything that names pictures, or layouts. */
export function listsIn(text: string, named: Named = 'pictures'): NameList[] {
  // a byte order mark would be a slip in the text; a space in its place keeps every offset
  const tree = parseTree(text.replace(/^\uFEFF/, ' '), [], { allowTrailingComma: true });
  const position = lineFinder(text);
  const nameOf = (node: Node): Name => {
    const start = node.offset + 1;
    const written = text.slice(start, node.offset + node.length - 1);
    return { word: node.value, written, start, ...position(start) };
  };
  return (tree?.children ?? []).flatMap(property => {
    const [key, value] = property.children ?? [];
    if (!value || !NAMING[named].includes(key.value)) return [];
    const lists = listsUnder[key.value]?.(value) ?? [...stringsIn(value)];
    return lists.map(list => ({ key: key.value, names: list.map(nameOf) }));
  });
}

/** Where not every text under a key names a picture: keys of `placements` do, the target of a part does not. */
const listsUnder: Record<string, (value: Node) => Node[][]> = {
  placements: value => [propertiesOf(value).map(([key]) => key)],
  parts: value => propertiesOf(value).flatMap(([, part]) => listsOfPart(part)),
};

const listsOfPart = (part: Node): Node[][] =>
  part.type === 'object'
    ? propertiesOf(part).flatMap(([key, told]) => (key.value === 'target' ? [] : [...stringsIn(told)]))
    : [...stringsIn(part)];

const propertiesOf = ({ children = [] }: Node): (readonly [key: Node, value: Node])[] =>
  children.flatMap(({ children: [key, value] = [] }) => (key && value ? [[key, value] as const] : []));

function* stringsIn(node: Node): Generator<Node[]> {
  if (node.type === 'string') yield [node];
  else if (node.type === 'array') {
    const children = node.children ?? [];
    yield children.filter(({ type }) => type === 'string');
    for (const child of children) if (child.type !== 'string') yield* stringsIn(child);
  } else for (const [, value] of propertiesOf(node)) yield* stringsIn(value);
}

/** What is to stand where a name stands, between its quotation marks. */
export interface Renamed {
  name: Name;
  to: string;
  picture: string;
}

/** Writes other names, and not one byte else; `dryRun` only tells. */
export async function rename(
  root: string,
  settings: NamesText,
  renamed: readonly Renamed[],
  dryRun: boolean,
): Promise<Pick<Relinked, 'settings' | 'problems'>> {
  if (!renamed.length) return { settings: [], problems: [] };
  const text = renamed
    .toSorted((x, y) => y.name.start - x.name.start)
    .reduce(
      (all, { name: { start, written }, to }) => all.slice(0, start) + to + all.slice(start + written.length),
      settings.text,
    );
  const why = dryRun ? unwritable(settings, text) : await replaceText(root, settings, text);
  return why
    ? { settings: [], problems: [{ file: SETTINGS_FILE, line: null, why }] }
    : { settings: renamed.map(lineOf), problems: [] };
}

const lineOf = ({ name: { line, column, written }, to, picture }: Renamed): RelinkedLine => ({
  ...{ file: SETTINGS_FILE, line, column },
  ...{ from: written, to, picture },
});

/** A name as JSON has it between quotation marks. */
export const inJson = (name: string): string => JSON.stringify(name).slice(1, -1);
