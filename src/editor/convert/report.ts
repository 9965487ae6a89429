// no-unit-test: it lives in VS Code; test/e2e/suites/convert tests it there
import * as vscode from 'vscode';

const SCHEME = 'evengrey-report';

/** Opens a text that tells what was done; in no palette, since it has to be given. */
export const SHOW_REPORT = 'evengrey.showReport';

/** Reports of what was done, as documents that only can be read: nobody is asked to save them. Kept while they are open. */
export function registerReports(): vscode.Disposable {
  const texts = new Map<string, string>();
  let made = 0;
  return vscode.Disposable.from(
    vscode.workspace.registerTextDocumentContentProvider(SCHEME, {
      provideTextDocumentContent: uri => texts.get(uri.toString()),
    }),
    vscode.workspace.onDidCloseTextDocument(({ uri }) => texts.delete(uri.toString())),
    vscode.commands.registerCommand(SHOW_REPORT, async (text: string) => {
      const uri = vscode.Uri.from({
        scheme: SCHEME,
        path: `/${vscode.l10n.t('Conversion report {0}', ++made)}.txt`,
      });
      texts.set(uri.toString(), text);
      await vscode.window.showTextDocument(uri, { preview: true });
    }),
  );
}
