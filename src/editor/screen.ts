// no-unit-test: it lives in VS Code; test/e2e/suites/screen tests it there
import * as vscode from 'vscode';

const SECTION = 'evengrey';
const KEY = 'screenPixelsPerInch';

/** CSS pixels on an inch of this machine's screen as a person has measured it; null: nobody has. */
export function screenPpi(): number | null {
  const ppi = vscode.workspace.getConfiguration(SECTION).get<number | null>(KEY);
  return typeof ppi === 'number' && ppi > 0 ? ppi : null;
}

export const rememberScreen = (ppi: number) =>
  vscode.workspace
    .getConfiguration(SECTION)
    .update(KEY, Math.round(ppi * 10) / 10, vscode.ConfigurationTarget.Global);

export const onScreenMeasured = (listen: () => void): vscode.Disposable =>
  vscode.workspace.onDidChangeConfiguration(change => {
    if (change.affectsConfiguration(`${SECTION}.${KEY}`)) listen();
  });
