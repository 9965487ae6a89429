import fs from 'node:fs/promises';
import path from 'node:path';
import { type Node, parseTree } from 'jsonc-parser';
import { matcher } from '../../book/discovery/globs';
import { SETTINGS_FILE } from '../../book/settings/load';
import { positionOf } from '../../book/settings/problem';
import type { Relinked } from '../../shared/conversion';

/** Keys of the settings under which pictures are named. */
const NAMING = new Set(['pictures', 'parts', 'intent', 'placements', 'spreads']);

/**
 * Places in the settings of the book that name a picture, alone or by a pattern, and not the result that the layouts place
 * instead of it: for what stands there, the result would be another picture.
 * @param replacements results by picture, relative to the root
 */
export async function settingsThatName(
  root: string,
  replacements: ReadonlyMap<string, string>,
): Promise<Relinked['problems']> {
  const written = await fs.readFile(path.join(root, SETTINGS_FILE), 'utf8').catch(() => '');
  // a byte order mark would be a slip in the text; a space in its place keeps every offset
  const text = written.startsWith('\uFEFF') ? ` ${written.slice(1)}` : written;
  const tree = parseTree(text, [], { allowTrailingComma: true });
  const problems: Relinked['problems'] = [];
  for (const property of tree?.children ?? []) {
    const [key, value] = property.children ?? [];
    if (!NAMING.has(key?.value) || !value) continue;
    for (const node of wordsIn(value)) {
      const why = outdated(node.value, replacements);
      if (why) problems.push({ file: SETTINGS_FILE, line: positionOf(text, node.offset).line, why });
    }
  }
  return problems;
}

/** Every text, keys too: a placement is one. */
function* wordsIn(node: Node): Generator<Node> {
  if (node.type === 'string') yield node;
  for (const child of node.children ?? []) yield* wordsIn(child);
}

function outdated(word: string, replacements: ReadonlyMap<string, string>): string | null {
  const names = matcher([word.replace(/^!/, '')]);
  const missed = [...replacements].filter(([original, result]) => names(original) && !names(result));
  if (!missed.length) return null;
  const [[original, result]] = missed;
  const more = missed.length > 1 ? `, and ${missed.length - 1} more so` : '';
  return word === original
    ? `"${word}" names the picture, not its result: what is said here does not hold for that. Write "${result}" instead, or as well.`
    : `"${word}" names ${original} and not its result${more}: what is said here does not hold for that. Add "${result}".`;
}
