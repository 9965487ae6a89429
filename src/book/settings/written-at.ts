// no-unit-test: test/book/idle-settings.test.ts finds words by it
import { findNodeAtLocation, type Node, parseTree } from 'jsonc-parser';
import { positionOf } from './problem';

/** A settings file as it was read. */
export interface SettingsText {
  /** Relative to the root, forward slashes. */
  file: string;
  text: string;
}

/** Where a word of the settings stands; line and column from 1. */
export interface WrittenAt {
  file: string;
  line: number;
  column: number;
  length: number;
}

/**
 * Finds every place of a word under a top-level key, or a path of keys, as a value or as a key, in the order of the text, which is read once
 * and only when something is sought.
 */
export function placesIn({
  file,
  text,
}: SettingsText): (under: string | readonly string[], word: string) => WrittenAt[] {
  let tree: Node | undefined;
  return (under, word) => {
    tree ??= parseTree(text.replace(/^\uFEFF/, ' '), [], { allowTrailingComma: true });
    const node = tree && findNodeAtLocation(tree, [under].flat());
    return [...(node ? stringsIn(node) : [])]
      .filter(({ value }) => value === word)
      .map(({ offset, length }) => ({ file, ...positionOf(text, offset), length }));
  };
}

function* stringsIn(node: Node): Generator<Node> {
  if (node.type === 'string') yield node;
  for (const child of node.children ?? []) yield* stringsIn(child);
}
