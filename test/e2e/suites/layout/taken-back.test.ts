import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { closeAll, extension, inWorkspace, problems, until } from '../../editor';
import { messageText, screenshot, toastPress, workbenchClick, workbenchText } from '../../window';

const PICTURE = 'pictures/plate-6.png';
const RESULT = 'pictures/plate-6.rgb-neutral.png';
const ROW = '.quick-input-list .monaco-list-row';
const at = (file: string) => inWorkspace(file).fsPath;
const textOf = (file: string) => fs.readFile(at(file), 'utf8');
const hashOf = async (file: string) =>
  createHash('sha256')
    .update(await fs.readFile(at(file)))
    .digest('hex');

/** As the preview does it, which has chosen what to make. */
async function convert(place: string) {
  const chosen = { to: 'rgb-neutral', method: 'lightness' };
  void vscode.commands.executeCommand('evengrey.convert', inWorkspace(PICTURE), undefined, chosen);
  await workbenchText(ROW, new RegExp(place));
  await workbenchClick(ROW, place);
  await messageText(/is written/);
}

describe('taking a conversion back by its message', () => {
  const layouts = ['chapters/one.md', 'plates.tex', 'cover.typ'];
  const stored = new Map<string, string>();
  const isFound = () =>
    until(
      'findings on the layouts',
      () => problems().filter(({ diagnostic }) => diagnostic.message.startsWith('plate-6.png:')).length,
      n => n > 1,
    );

  before(async () => {
    await extension().activate();
    for (const file of layouts) stored.set(file, await textOf(file));
    await isFound();
  });
  afterEach(async () => {
    await vscode.window.showTextDocument(inWorkspace('cover.typ'));
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    await closeAll();
    for (const [file, text] of stored) await fs.writeFile(at(file), text);
    await fs.rm(at(RESULT), { force: true });
    await isFound();
  });

  it('leaves a result that a line places which somebody else wrote, though it is not saved', async () => {
    const { document } = await vscode.window.showTextDocument(inWorkspace('cover.typ'));
    const own = new vscode.WorkspaceEdit();
    const start = document.getText().indexOf('pictures/plate-2.jpg');
    const path = new vscode.Range(document.positionAt(start), document.positionAt(start + 20));
    own.replace(document.uri, path, RESULT);
    await vscode.workspace.applyEdit(own);
    await convert('the layouts place the result');
    await toastPress('Undo');
    const toast = await messageText(/place the picture again: 2/);
    assert.match(
      toast,
      /plate-6\.rgb-neutral\.png: cover\.typ:1 still places it, so it was left where it is/,
    );
    assert.doesNotMatch(toast, /Taken away/);
    await screenshot('layout-undo-left');
    await fs.stat(at(RESULT));
    assert.equal(document.isDirty, true);
    for (const [file, text] of stored) assert.equal(await textOf(file), text);
  });

  it('of one in place leaves lines that an earlier one relinked', async () => {
    const original = await hashOf(PICTURE);
    await convert('the layouts place the result');
    const relinked = await textOf('chapters/one.md');
    assert.match(relinked, /plate-6\.rgb-neutral\.png/);
    await vscode.commands.executeCommand('notifications.clearAll');
    await convert('In place');
    assert.notEqual(await hashOf(PICTURE), original);
    await toastPress('Undo');
    assert.doesNotMatch(await messageText(/is the original again, bit for bit/), /place the picture again/);
    assert.equal(await hashOf(PICTURE), original);
    assert.equal(await textOf('chapters/one.md'), relinked);
  });
});
