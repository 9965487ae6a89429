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

/** Waits until the book that suites share has been read. */
export async function bookRead(): Promise<void> {
  await extension().activate();
  await until(
    'findings',
    () => rulesOn('pictures/plate-7.tif'),
    rules => rules.length > 0,
  );
}

export async function closeAll(): Promise<void> {
  await vscode.commands.executeCommand('notifications.clearAll');
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
}

const THEMES = [
  ['light', 'Default Light Modern'],
  ['dark', 'Default Dark Modern'],
  ['high-contrast', 'Default High Contrast'],
  ['high-contrast-light', 'Default High Contrast Light'],
];

const paint = (theme: string | undefined) =>
  vscode.workspace
    .getConfiguration('workbench')
    .update('colorTheme', theme, vscode.ConfigurationTarget.Global);

/** A test in each of the editor's own themes; then all is as it was. */
export function inEachTheme(title: string, look: (theme: string) => Promise<void>): void {
  after(() => paint(undefined));
  for (const [name, theme] of THEMES)
    it(`${title} in a theme that is ${name}`, async () => {
      await paint(theme);
      await look(name);
    });
}
