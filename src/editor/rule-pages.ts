// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { CheckerClient } from './checker-client';

const SCHEME = 'evengrey-rule';

/** Address of a rule's page as a read-only document. */
export const rulePage = (rule: string) => vscode.Uri.from({ scheme: SCHEME, path: `/${rule}.md` });

/** The pages of the rules: what a finding means in print, what to do, when to leave it. */
export function registerRulePages(checker: CheckerClient): vscode.Disposable {
  const provider: vscode.TextDocumentContentProvider = {
    async provideTextDocumentContent(uri) {
      const rule = uri.path.replace(/^\/|\.md$/g, '');
      return checker.ask('page', { rule });
    },
  };

  return vscode.Disposable.from(
    vscode.workspace.registerTextDocumentContentProvider(SCHEME, provider),
    vscode.commands.registerCommand('evengrey.explainRule', async (rule?: unknown) => {
      const id = typeof rule === 'string' ? rule : await chooseRule(checker);
      if (!id) return;
      await vscode.commands.executeCommand('markdown.showPreview', rulePage(id));
    }),
  );
}

/** From the palette nobody said which. */
async function chooseRule(checker: CheckerClient): Promise<string | undefined> {
  const rules = checker.ask('rules', {});
  const items = rules.then(list => list.map(({ id, description }) => ({ label: id, detail: description })));
  const choice = await vscode.window.showQuickPick<vscode.QuickPickItem>(items, {
    placeHolder: vscode.l10n.t('Which rule?'),
    matchOnDetail: true,
  });
  return choice?.label;
}
