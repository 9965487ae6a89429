import ignore, { type Ignore } from 'ignore';

/** Files that say what a folder holds beside its pictures, in git's own pattern language; the later has the last word. */
export const IGNORE_FILES = ['.gitignore', '.evengreyignore'];
/** What is larger was written by no person, and is passed over. */
export const LONGEST_IGNORE = 1024 * 1024;

interface Layer {
  /** The folder the patterns count from, relative to the root, '' or ending in a slash. */
  base: string;
  patterns: Ignore;
}

/** The ignore files of a folder and of those above it, up to the root. */
export class Ignored {
  private constructor(private readonly layers: readonly Layer[]) {}

  static readonly none = new Ignored([]);

  /** With the texts of the ignore files of one more folder, `relative` to the root ('' is the root), in the order of `IGNORE_FILES`. */
  with(relative: string, texts: readonly string[]): Ignored {
    if (!texts.length) return this;
    const base = relative && `${relative}/`;
    const layers = texts.map(text => ({
      base,
      patterns: ignore({ ignorecase: false, allowRelativePaths: true }).add(text),
    }));
    return new Ignored([...this.layers, ...layers]);
  }

  /** `relative` to the root; a folder and a file of one name can differ. */
  has(relative: string, isFolder: boolean): boolean {
    let ignored = false;
    for (const { base, patterns } of this.layers) {
      const below = relative.slice(base.length) + (isFolder ? '/' : '');
      const verdict = patterns.test(below);
      if (verdict.ignored) ignored = true;
      else if (verdict.unignored) ignored = false;
    }
    return ignored;
  }
}
