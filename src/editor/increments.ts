// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Progress } from '../shared/checker-protocol';

/** Tells a notification how far the pictures are. */
export function increments(progress: vscode.Progress<{ message: string; increment: number }>) {
  let before = 0;
  return ({ done, total }: Progress) => {
    const increment = total ? ((done - before) / total) * 100 : 0;
    before = done;
    progress.report({ message: vscode.l10n.t('{0} of {1} pictures', done, total), increment });
  };
}
