import { isRemote } from './reference';
import type { LayoutKind, Reference } from './types';

export type Resolution =
  /** `path` relative to the book's root; `base`: the folder that the reference counts from, '' for the root. */
  | { kind: 'found'; path: string; base: string }
  /**
   * `path`: where it was expected first: in a folder that the text names for it, where it names any. `places`: every
   * one where it was looked for as it is written; `folders`: those of these that the text names.
   */
  | { kind: 'missing'; path: string; base: string; places: string[]; folders: string[] }
  /** It leads out of the book's folder. */
  | { kind: 'outside' }
  /** Another machine's, written into the text itself, or put together by a program. */
  | { kind: 'elsewhere' };

/** What `\includegraphics` tries behind a name without extension (pdfTeX's own order), then what others add. */
const EXTENSIONS = '.pdf .png .jpg .mps .jpeg .jbig2 .jb2 .PDF .PNG .JPG .JPEG .JBIG2 .JB2 .eps .svg'.split(
  ' ',
);

export interface Surroundings {
  /** Folders that the layout's tool is started in, beside that of the file: those of the files that include it. */
  mainFolders?: readonly string[];
}

/**
 * Where a picture lies, as the layout's own tool would find it. `layoutFile` and all paths are relative to the book's
 * root with forward slashes; `existing` says whether there is a file. Of several places the first that has it counts.
 */
export function resolve(
  reference: Reference,
  layoutFile: string,
  kind: LayoutKind,
  existing: (path: string) => boolean,
  surroundings: Surroundings = {},
): Resolution {
  const all = candidates(reference, layoutFile, kind, surroundings);
  if (all === 'elsewhere') return { kind: 'elsewhere' };
  const inside = all.flatMap(({ path, base }) => {
    const normal = normalised(path);
    return normal ? [{ path: normal, base }] : [];
  });
  const found = inside.find(({ path }) => existing(path));
  if (found) return { kind: 'found', ...found };
  if (!reference.certain) return { kind: 'elsewhere' };
  if (!inside.length) return { kind: 'outside' };
  return inside.length ? missing(inside, reference, layoutFile, kind, surroundings) : { kind: 'outside' };
}

/** Of all places those where the tool looks for sure, as the path is written: nobody knows which extension was left out. */
function missing(
  inside: readonly Candidate[],
  { folders }: Reference,
  layoutFile: string,
  kind: LayoutKind,
  { mainFolders = [] }: Surroundings,
): Resolution {
  if (kind !== 'latex')
    return { kind: 'missing', ...inside[0], places: unique(inside.map(({ path }) => path)), folders: [] };
  const started = mainFolders.length ? mainFolders : [folderOf(layoutFile)];
  const named = started.flatMap(base => folders.map(folder => joined(base, folder)));
  const asWritten = inside.slice(0, inside.length / (1 + EXTENSIONS.length));
  const inNamed = asWritten.filter(({ base }) => named.includes(base));
  const sure = [...inNamed, ...asWritten.filter(({ base }) => started.includes(base))];
  return {
    ...{ kind: 'missing', ...(sure[0] ?? asWritten[0]) },
    places: unique((sure.length ? sure : asWritten).map(({ path }) => path)),
    folders: unique(inNamed.map(({ path }) => folderOf(path))),
  };
}

interface Candidate {
  path: string;
  base: string;
}

/** Every place where a tool would look, in its order. Not yet normalised: `..` may lead out of the root. */
export function candidates(
  { path: written, literal, before, after, folders }: Reference,
  layoutFile: string,
  kind: LayoutKind,
  { mainFolders = [] }: Surroundings = {},
): Candidate[] | 'elsewhere' {
  const own = folderOf(layoutFile);
  const names = [written, ...(literal === null ? [] : [literal])].map(name => before + name + after);
  if (names.some(name => isElsewhere(name, kind)) || folders.some(isRemote)) return 'elsewhere';
  const bases = basesOf(names[0], own, kind, mainFolders, folders);
  const found = bases.flatMap(base =>
    names.map(name => ({ path: joined(base, name.replace(/^\/+/, '')), base })),
  );
  if (kind !== 'latex') return found;
  return [
    ...found,
    ...found.flatMap(({ path, base }) => EXTENSIONS.map(end => ({ path: path + end, base }))),
  ];
}

function basesOf(
  name: string,
  own: string,
  kind: LayoutKind,
  mainFolders: readonly string[],
  folders: readonly string[],
): string[] {
  switch (kind) {
    case 'latex': {
      if (isAbsolute(name)) return [OUT];
      const started = unique([...mainFolders, own, '']);
      return unique([...started, ...started.flatMap(base => folders.map(folder => joined(base, folder)))]);
    }
    case 'asciidoc': {
      if (isAbsolute(name)) return [OUT];
      const started = unique([own, ...mainFolders]);
      return folders.length ? started.flatMap(base => folders.map(folder => joined(base, folder))) : started;
    }
    case 'typst':
    case 'markdown':
    case 'html':
    case 'css':
      if (/^[a-z]:|^file:/i.test(name)) return [OUT];
      // a function of another Typst file looks from where it is defined
      if (folders.length && !name.startsWith('/')) return folders.map(folder => joined(own, folder));
      // the root of a site or of a Typst project is some folder above the file
      return name.startsWith('/') ? ancestors(own) : [own];
  }
}

/** A base that no path comes back from. */
const OUT = '..';

const isAbsolute = (name: string) => /^(?:[/\\]|[a-z]:)/i.test(name);

const isElsewhere = (name: string, kind: LayoutKind): boolean =>
  isRemote(name) ||
  (kind === 'latex' && /[\\#]/.test(name)) ||
  (kind === 'asciidoc' && /\{[\w-]+\}/.test(name));

const unique = (list: readonly string[]) => [...new Set(list)];

export const folderOf = (file: string): string => file.slice(0, Math.max(0, file.lastIndexOf('/')));

/** The root first, then down to the folder itself. */
const ancestors = (folder: string): string[] => {
  const steps = folder.split('/').filter(Boolean);
  return ['', ...steps.map((_, i) => steps.slice(0, i + 1).join('/'))];
};

const joined = (base: string, name: string): string => (base ? `${base}/${name}` : name);

/** Without `.` and `..`; null where the path leads out of the root or names nothing. */
export function normalised(path: string): string | null {
  const steps: string[] = [];
  for (const step of path.split('/'))
    if (step === '..') {
      if (!steps.length || steps.at(-1) === '..') return null;
      steps.pop();
    } else if (step && step !== '.') steps.push(step);
  return steps.length ? steps.join('/') : null;
}
