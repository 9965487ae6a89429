import fs from 'node:fs/promises';
import path from 'node:path';
import { resolvedLayouts } from '../../book/layouts';
import type { Settings } from '../../book/settings/settings';

export interface StillPlacing {
  root: string;
  settings: Settings;
  /** Texts as an editor has them open and not saved. */
  open: ReadonlyMap<string, string>;
  signal?: AbortSignal;
}

/**
 * Says of a result (absolute path) which line still places it, whoever wrote that line, as a reason why it stays; null:
 * none does. What is open and not saved counts, and what is stored as well: it is what a layout's tool reads.
 */
export async function stillPlaced({
  root,
  settings,
  open,
  signal,
}: StillPlacing): Promise<(file: string) => Promise<string | null>> {
  const realRoot = await fs.realpath(root);
  const linesOf = async (texts?: ReadonlyMap<string, string>) => {
    const lines = new Map<string, string>();
    const { sources } = await resolvedLayouts(realRoot, settings, { open: texts, signal });
    for (const source of sources)
      for (const { reference, found } of source.placed)
        if (found.kind === 'found')
          lines.set(await resolved(path.join(realRoot, found.path)), `${source.path}:${reference.line}`);
    return lines;
  };
  const inEditor = await linesOf(open);
  const stored = await linesOf();
  return async file => {
    const at = await resolved(file);
    const line = inEditor.get(at);
    if (line) return `${line} still places it, so it was left where it is.`;
    const storedLine = stored.get(at);
    return storedLine
      ? `${storedLine} still places it as it is stored, so it was left where it is. Save that text first.`
      : null;
  };
}

const resolved = (file: string) => fs.realpath(file).catch(() => file);
