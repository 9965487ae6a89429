import assert from 'node:assert/strict';
import * as vscode from 'vscode';

export const extension = () => vscode.extensions.getExtension('evengrey.evengrey')!;

export const workspace = () => vscode.workspace.workspaceFolders![0].uri;
export const inWorkspace = (path: string) => vscode.Uri.joinPath(workspace(), path);

/** Folder of pictures to put in place of others. */
export const spare = () => vscode.Uri.joinPath(workspace(), '../spare').fsPath;

/** Everything that the Problems panel lists of ours. */
export const problems = () =>
  vscode.languages
    .getDiagnostics()
    .flatMap(([uri, list]) =>
      list.map(diagnostic => ({ file: vscode.workspace.asRelativePath(uri), diagnostic })),
    )
    .filter(({ diagnostic }) => diagnostic.source === 'Evengrey');

/** Rules that speak of a file, each once, sorted. */
export const rulesOn = (file: string) => [
  ...new Set(
    problems()
      .filter(p => p.file === file)
      .map(({ diagnostic }) => ruleOf(diagnostic))
      .sort(),
  ),
];

const ruleOf = ({ code }: vscode.Diagnostic) =>
  typeof code === 'object' ? String(code.value) : String(code ?? 'settings');

/** Waits for something to become true; says what was there instead if it does not. */
export async function until<T>(
  what: string,
  look: () => T | Promise<T>,
  isSo: (seen: T) => boolean,
  ms = 20_000,
): Promise<T> {
  const end = Date.now() + ms;
  for (;;) {
    const seen = await look();
    if (isSo(seen)) return seen;
    if (Date.now() > end) assert.fail(`waited ${ms} ms for ${what}; there is ${JSON.stringify(seen)}`);
    await sleep(50);
  }
}

export const sleep = (ms: number) => new Promise(resolve => setTimeout(resolve, ms));
