// no-unit-test: test/book/layouts/index.test.ts reads whole documents by it
import path from 'node:path';
import { type Inherited, normalised, parseLayout, type Source } from '../../layout';

interface Text {
  path: string;
  text: string;
}

/** By their place among the texts. */
type Taken = readonly { to: number; namesOnly: boolean }[];
type Functions = NonNullable<Inherited['functions']>;

/** A chain of more imports is none that a person wrote. */
const DEEPEST = 50;

/**
 * What Typst texts are told by others: the functions that they import, and the width of the page where the text that
 * includes them sets it, or a template that they import. `taken`: what each takes in; nothing for another language.
 */
export function typstInheritance(
  texts: readonly Text[],
  sources: readonly Source[],
  taken: readonly Taken[],
): (at: number) => Inherited {
  const includedBy = new Map<number, number>();
  for (const [at, all] of taken.entries())
    for (const { to, namesOnly } of all)
      if (!namesOnly && to !== at && !includedBy.has(to)) includedBy.set(to, at);
  const imports = taken.map(all => all.flatMap(({ to, namesOnly }) => (namesOnly ? to : [])));
  const known = new Map<number, Functions>();

  /** What a text defines, what it imports included; a ring of imports gives no more than each defines by itself. */
  const exported = (at: number, depth: number): Functions => {
    const own = sources[at].passesOn.functions ?? new Map();
    if (!imports[at].length || depth > DEEPEST) return own;
    const before = known.get(at);
    if (before) return before;
    known.set(at, own);
    const functions = importedBy(at, depth);
    const all = functions.size
      ? (parseLayout(texts[at].text, 'typst', { inherited: { functions } }).passesOn.functions ?? own)
      : own;
    known.set(at, all);
    return all;
  };

  const importedBy = (at: number, depth: number): Functions => {
    const folder = path.posix.dirname(texts[at].path);
    const all = imports[at].flatMap(from => {
      const defined = path.posix.dirname(texts[from].path);
      return [...exported(from, depth + 1)].map(([name, placing]) => {
        const there = normalised(path.posix.join(defined, placing.folder)) ?? '';
        return [name, { ...placing, folder: path.posix.relative(folder, there || '.') }] as const;
      });
    });
    return new Map(all);
  };

  const widthOf = (at: number, seen: Set<number> = new Set()): number | undefined => {
    const own = sources[at].passesOn.textWidth;
    if (own !== undefined || seen.has(at)) return own;
    seen.add(at);
    const above = includedBy.get(at);
    const told = above === undefined ? undefined : widthOf(above, seen);
    return (
      told ?? imports[at].map(from => sources[from].passesOn.textWidth).find(width => width !== undefined)
    );
  };

  return at => ({ functions: importedBy(at, 0), textWidth: widthOf(at) });
}
