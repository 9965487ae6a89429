import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import { basename, extname } from 'node:path';
import * as vscode from 'vscode';
import { closeAll, extension, inWorkspace, problems, rulesOn, until } from '../../editor';
import { messageText, press, screenshot, toastPress, workbenchClick, workbenchText } from '../../window';

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
async function convert(place: string, picture = PICTURE, to = 'rgb-neutral') {
  const chosen = { to, method: 'lightness' };
  void vscode.commands.executeCommand('evengrey.convert', inWorkspace(picture), undefined, chosen);
  await workbenchText(ROW, new RegExp(place));
  await workbenchClick(ROW, place);
  await messageText(new RegExp(`${basename(picture, extname(picture))}\\S* is written`));
}

describe('taking a conversion back', () => {
  const layouts = ['chapters/one.md', 'plates.tex', 'cover.typ'];
  const stored = new Map<string, string>();
  // on the picture as well: lines would tell too that it is missing
  const isFound = () =>
    until(
      'findings on the layouts',
      () => problems().filter(({ diagnostic }) => diagnostic.message.startsWith('plate-6.png:')).length,
      n => n > 1 && rulesOn(PICTURE).includes('residual-chroma'),
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
    for (const name of await fs.readdir(at('pictures')))
      if (/\.(rgb-neutral|single-channel)\./.test(name)) await fs.rm(at(`pictures/${name}`));
    await isFound();
  });

  it('by its message leaves a result that a line places which somebody else wrote, though it is not saved', async () => {
    const document = await vscode.workspace.openTextDocument(inWorkspace('cover.typ'));
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

  it('by its message leaves lines that an earlier one relinked, where this one was in place', async () => {
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

  it('by the editor is told step by step, as long as it is not saved', async () => {
    const file = 'plates.tex';
    const before = stored.get(file)!.replace('{plate-6}', '{plate-5.jpg}');
    await fs.writeFile(at(file), before);
    const { document } = await vscode.window.showTextDocument(inWorkspace(file));
    const is = (text: string) =>
      until(
        'the text',
        () => document.getText(),
        now => now === text,
      );
    await is(before);
    await convert('the layouts place the result', 'pictures/plate-7.tif');
    const between = document.getText();
    assert.match(between, /plate-7\.tif\.rgb-neutral/);
    await convert('the layouts place the result', 'pictures/plate-5.jpg', 'single-channel');
    assert.match(document.getText(), /plate-5\.(jpg\.)?single-channel/);
    for (const text of [between, before]) {
      await vscode.commands.executeCommand('notifications.clearAll');
      await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
      await press('Control+z');
      await is(text);
      await messageText(/Undone in the editor, and not saved: plates\.tex\./);
    }
    await toastPress('Save');
    await until(
      'the file as it was',
      () => textOf(file),
      text => text === before,
    );
  });

  it('later says nothing of results where no line places a picture again', async () => {
    await convert('the layouts place the result');
    await vscode.commands.executeCommand('notifications.clearAll');
    const away = `${at(PICTURE)}.away`;
    await fs.rename(at(PICTURE), away);
    try {
      await vscode.commands.executeCommand('evengrey.undoConversion', inWorkspace('chapters'));
      const told = await messageText(/"pictures\/plate-6\.png" is not there any more/);
      assert.doesNotMatch(told, /The results themselves stay/);
    } finally {
      await fs.rename(away, at(PICTURE));
    }
  });
});
