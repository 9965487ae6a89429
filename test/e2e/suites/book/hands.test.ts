import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import path from 'node:path';
import * as vscode from 'vscode';
import { bookRead, closeAll, inWorkspace, problems, rulesOn, spare, until } from '../../editor';
import { press, webviewText, workbenchClick, workbenchText } from '../../window';

const activeTab = () => vscode.window.tabGroups.activeTabGroup.activeTab;

describe('by mouse and keyboard', () => {
  before(bookRead);
  afterEach(closeAll);

  it('a rule’s name in the Problems panel opens its page', async () => {
    await vscode.commands.executeCommand('workbench.actions.view.problems');
    await workbenchClick('.markers-panel .monaco-link', 'encoding-not-accepted');
    await webviewText('body.vscode-body', /\w/);
    await workbenchText('.tabs-container', /encoding-not-accepted/);
    await vscode.commands.executeCommand('workbench.action.closePanel');
  });

  it('a row of the Problems panel opens the picture', async () => {
    await vscode.commands.executeCommand('workbench.actions.view.problems');
    await workbenchClick('.markers-panel .monaco-list-row', 'refuse this picture');
    await webviewText('main', /plate-7\.tif/);
    await vscode.commands.executeCommand('workbench.action.closePanel');
  });

  it('a button in the bar of the built-in preview shows how the picture prints', async () => {
    await vscode.commands.executeCommand('vscode.open', inWorkspace('pictures/plate-2.jpg'));
    await workbenchClick('.editor-actions a[aria-label^="Show How It Prints"]');
    await webviewText('main', /plate-2\.jpg/);
    assert.ok(activeTab()?.input instanceof vscode.TabInputCustom);
  });

  it('the palette offers the commands, and explains a rule that is chosen there', async () => {
    await vscode.commands.executeCommand('workbench.action.quickOpen', '>Evengrey: ');
    await workbenchText('.quick-input-list', /Check the Book/);
    await press('Escape');
    const explained = vscode.commands.executeCommand('evengrey.explainRule');
    await workbenchText('.quick-input-list', /blocked-shadows/);
    await workbenchClick('.quick-input-list .monaco-list-row', 'blocked-shadows');
    await explained;
    await workbenchText('.tabs-container', /blocked-shadows/);
  });

  it('a check shows its progress and can be cancelled', async () => {
    const large = Array.from({ length: 12 }, (_, i) => inWorkspace(`pictures/large-${i}.jpg`));
    const bytes = await fs.readFile(path.join(spare(), 'large.jpg'));
    try {
      for (const [i, file] of large.entries())
        await fs.writeFile(file.fsPath, Buffer.concat([bytes, Buffer.from(`cancel${i}`)]));
      const checked = vscode.commands.executeCommand('evengrey.check');
      await workbenchText('.notification-toast', /Checking the book/);
      await workbenchClick('.notification-toast .monaco-button', 'Cancel');
      await checked;
    } finally {
      for (const file of large) await fs.rm(file.fsPath, { force: true });
    }
    await until(
      'the book as it was',
      () => rulesOn('pictures/plate-7.tif'),
      rules => rules.length > 0,
    );
    await until('large ones gone', problems, list => !list.some(({ file }) => file.includes('large')));
  });
});
