import path from 'node:path';

/** Something wrong in a settings file, told where it stands. Settings with a problem are not used. */
export interface Problem {
  /** Path of the file relative to the book's root, forward slashes. */
  file: string;
  /** Where in the text: characters from 0, as an editor wants them. */
  offset: number;
  length: number;
  /** The same for people: from 1. */
  line: number;
  column: number;
  message: string;
  /** The word that was probably meant, where there is one. */
  suggestion: string | null;
}

/** Line and column (from 1) of a character offset. A carriage return belongs to its line's end. */
export function positionOf(text: string, offset: number): { line: number; column: number } {
  let line = 1;
  let start = 0;
  for (let at = text.indexOf('\n'); at !== -1 && at < offset; at = text.indexOf('\n', at + 1)) {
    line++;
    start = at + 1;
  }
  return { line, column: offset - start + 1 };
}

/**
 * `file:line:column: message`, as compilers say it, so that terminals and editors make a link of it. The file of the
 * book at `root` is named from `folder`.
 */
export function describeProblem(problem: Problem, root: string, folder: string): string {
  const file = path.relative(folder, path.resolve(root, problem.file));
  return `${file}:${problem.line}:${problem.column}: ${problem.message}`;
}
