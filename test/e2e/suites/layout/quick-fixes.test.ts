import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { tiff } from '../../../cli/support/tiff';
import { extension, inWorkspace, problems, until } from '../../editor';
import { ask, choose } from '../../quick-fix';
import { messageText, press, screenshot, toastPress, webviewText, workbenchText } from '../../window';
import { typed } from './typed';

const RESULT = 'pictures/plate-6.rgb-neutral.png';
const at = (file: string) => inWorkspace(file).fsPath;
const textOf = (file: string) => fs.readFile(at(file), 'utf8');

describe('quick fixes on the line of a picture', () => {
  const layouts = ['chapters/one.md', 'plates.tex'];
  const stored = new Map<string, string>();

  before(async () => {
    await extension().activate();
    for (const file of layouts) stored.set(file, await textOf(file));
    await until(
      'findings on a layout',
      () => problems().filter(({ file }) => file === 'plates.tex').length,
      n => n > 1,
    );
  });
  afterEach(async () => {
    await vscode.commands.executeCommand('notifications.clearAll');
    while (vscode.window.activeTextEditor?.document.isDirty)
      await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    for (const [file, text] of stored) await fs.writeFile(at(file), text);
    for (const name of await fs.readdir(at('pictures')))
      if (/\.rgb-neutral\./.test(name)) await fs.rm(at(`pictures/${name}`));
    await until(
      'the book as it was',
      () =>
        problems()
          .filter(({ diagnostic }) => /^plate-[67]\.(png|tif):/.test(diagnostic.message))
          .map(({ file }) => file),
      all => layouts.every(file => all.includes(file)) && all.length > 2,
    );
  });

  const open = async (file: string) => {
    const editor = await vscode.window.showTextDocument(inWorkspace(file));
    await until(
      `findings on ${file}`,
      () => vscode.languages.getDiagnostics(inWorkspace(file)).length,
      n => n > 0,
    );
    return editor;
  };

  it('convert the picture and place the result, in this text and in the others that place it', async () => {
    const editor = await open('chapters/one.md');
    const menu = await ask(editor, 'plate-6.png');
    for (const title of [
      'Convert to rgb-neutral and place the result',
      'Waive residual-chroma on plate-6.png...',
      'Show how it prints',
      'Explain residual-chroma',
    ])
      assert.ok(menu.includes(title), menu);
    const order = ['Convert to', 'Show how', 'Waive', 'Explain'].map(words => menu.indexOf(words));
    assert.deepEqual(
      order,
      order.toSorted((x, y) => x - y),
      menu,
    );
    await screenshot('layout-quick-fix');
    await choose('Convert to rgb-neutral and place the result');
    const toast = await messageText(/is written/);
    assert.match(toast, /plate-6\.rgb-neutral\.png is written\. Read again: rgb-neutral/);
    assert.match(toast, /layouts that place the result now: 2 \(chapters\/one\.md, plates\.tex\)/);
    assert.ok((await fs.stat(at(RESULT))).size > 1000);
    assert.match(editor.document.getText(), /!\[Six\]\(\.\.\/pictures\/plate-6\.rgb-neutral\.png\)/);
    assert.equal(editor.document.isDirty, false, 'what was saved before is saved after');
    assert.equal(await textOf('chapters/one.md'), editor.document.getText());
    assert.match(
      await textOf('plates.tex'),
      /\{plate-6\.rgb-neutral\}|\{plate-6\.rgb-neutral\.png\}|\{\{plate-6\.rgb-neutral\}\.png\}/,
    );
    await until(
      'the finding to go from the line',
      () => vscode.languages.getDiagnostics(inWorkspace('chapters/one.md')).map(({ message }) => message),
      all => !all.some(message => /plate-6/.test(message)),
    );
    await screenshot('layout-quick-fix-done');
  });

  it('are taken back by the message: the lines, in what is open and what is not, and the file', async () => {
    const editor = await open('chapters/one.md');
    await ask(editor, 'plate-6.png');
    await choose('Convert to rgb-neutral and place the result');
    await messageText(/is written/);
    await toastPress('Undo');
    const toast = await messageText(/place the picture again/);
    assert.match(toast, /Taken away, since still as it was written: plate-6\.rgb-neutral\.png/);
    assert.match(toast, /place the picture again: 2 \(chapters\/one\.md, plates\.tex\)/);
    for (const [file, text] of stored) assert.equal(await textOf(file), text);
    assert.equal(editor.document.isDirty, false);
    await assert.rejects(fs.stat(at(RESULT)), /ENOENT/);
  });

  it('are taken back by Undo Conversion later: the lines alone', async () => {
    const editor = await open('chapters/one.md');
    await ask(editor, 'plate-6.png');
    await choose('Convert to rgb-neutral and place the result');
    await messageText(/is written/);
    await vscode.commands.executeCommand('notifications.clearAll');
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    await vscode.commands.executeCommand('evengrey.undoConversion');
    await messageText(/place the picture again: 2 .*The results themselves stay/);
    for (const [file, text] of stored) assert.equal(await textOf(file), text);
    await fs.stat(at(RESULT));
  });

  it('are undone as one step, and what is not saved then is told with the way to save it', async () => {
    const editor = await open('plates.tex');
    await ask(editor, 'plate-7.tif');
    await choose('Convert to rgb-neutral, written as PNG, and place the result');
    await messageText(/is written/);
    await until(
      'the line',
      () => editor.document.getText(),
      text => text.includes('plate-7.tif.rgb-neutral'),
    );
    await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
    await press('Control+z');
    await until(
      'the text as it was',
      () => editor.document.getText(),
      text => text === stored.get('plates.tex'),
    );
    assert.notEqual(await textOf('plates.tex'), stored.get('plates.tex'), 'nothing is saved by itself');
    await messageText(/Undone in the editor, and not saved: plates\.tex\./);
    await screenshot('layout-undone');
    await toastPress('Save');
    await until(
      'the file as it was',
      () => textOf('plates.tex'),
      text => text === stored.get('plates.tex'),
    );
  });

  it('respect what is typed and not saved', async () => {
    const editor = await open('chapters/one.md');
    editor.selection = new vscode.Selection(0, 0, 0, 0);
    await typed(editor.document, 'Not saved.\n\n');
    await ask(editor, 'plate-6.png');
    await choose('Convert to rgb-neutral and place the result');
    const toast = await messageText(/is written/);
    assert.match(
      toast,
      /Changes of yours were not saved in chapters\/one\.md: the line is changed there too/,
    );
    assert.equal(editor.document.isDirty, true);
    assert.equal(
      editor.document.getText(),
      `Not saved.\n\n${stored.get('chapters/one.md')!.replace('plate-6.png', 'plate-6.rgb-neutral.png')}`,
    );
    assert.equal(await textOf('chapters/one.md'), stored.get('chapters/one.md'));
  });

  it('place a result of before without making it again', async () => {
    const editor = await open('chapters/one.md');
    for (let time = 1; time <= 2; time++) {
      await ask(editor, 'plate-6.png');
      await choose('Convert to rgb-neutral and place the result');
      await messageText(time === 1 ? /is written/ : /1 skipped.*place the result now: \d/);
      assert.match(editor.document.getText(), /plate-6\.rgb-neutral\.png/);
      await vscode.commands.executeCommand('notifications.clearAll');
      for (const [file, text] of stored) await fs.writeFile(at(file), text);
      await until(
        'the text of before',
        () => editor.document.getText(),
        text => text === stored.get('chapters/one.md'),
      );
      await until(
        'the finding again',
        () => vscode.languages.getDiagnostics(inWorkspace('chapters/one.md')).map(({ message }) => message),
        all => all.some(message => /plate-6/.test(message)),
      );
    }
  });

  it('convert all pictures of a document with the same finding', async () => {
    const second = stored.get('chapters/one.md')!.replace('plate-1.jpg', 'plate-5.jpg');
    const before = await fs.readFile(at('pictures/plate-5.jpg'));
    await fs.copyFile(at('../spare/stained.jpg'), at('pictures/plate-5.jpg'));
    try {
      const editor = await open('chapters/one.md');
      await editor.edit(edit => edit.replace(new vscode.Range(0, 0, 99, 0), second));
      await until(
        'two stains',
        () => vscode.languages.getDiagnostics(inWorkspace('chapters/one.md')).map(({ message }) => message),
        all => ['plate-5.jpg', 'plate-6.png'].every(name => all.some(message => message.startsWith(name))),
      );
      await ask(editor, 'plate-6.png');
      await choose('Convert all 2 pictures with residual-chroma');
      await messageText(/2 converted/);
      assert.match(editor.document.getText(), /plate-5\.(jpg\.)?rgb-neutral\.(jpg|png)\)/);
      assert.match(editor.document.getText(), /plate-6\.rgb-neutral\.png/);
    } finally {
      await fs.writeFile(at('pictures/plate-5.jpg'), before);
    }
  });

  it('leave of many what has a strong tone, and say so', async () => {
    const sepia = tiff(96, 64, x => [40 + 2 * x, 25 + 2 * x, 2 * x]);
    await fs.writeFile(at('pictures/sepia.tif'), sepia);
    try {
      const editor = await open('plates.tex');
      const text = stored.get('plates.tex')!.replace('{plate-6}', '{sepia.tif}');
      await editor.edit(edit => edit.replace(new vscode.Range(0, 0, 99, 0), text));
      await until(
        'a finding on the sepia',
        () => vscode.languages.getDiagnostics(inWorkspace('plates.tex')).map(({ message }) => message),
        all => all.some(message => message.startsWith('sepia.tif')),
      );
      await ask(editor, 'plate-7.tif');
      await choose('Convert all 2 pictures with encoding-not-accepted');
      const toast = await messageText(/1 converted, 1 skipped/);
      assert.match(toast, /nobody said that they are to be grey\. With a strong tone.*: sepia\.tif\./);
      assert.match(editor.document.getText(), /sepia\.tif/);
      assert.match(editor.document.getText(), /plate-7\.tif\.rgb-neutral/);
    } finally {
      await fs.rm(at('pictures/sepia.tif'));
    }
  });

  it('open the preview, and explain the rule', async () => {
    const editor = await open('plates.tex');
    await ask(editor, 'plate-7.tif');
    await choose('Show how it prints');
    await webviewText('main', /plate-7\.tif/);
    await vscode.window.showTextDocument(editor.document);
    await ask(editor, 'plate-7.tif');
    await choose('Explain encoding-not-accepted');
    await workbenchText('.tabs-container', /encoding-not-accepted/);
  });

  it('offer no conversion of a picture that is missing', async () => {
    const editor = await open('chapters/one.md');
    const menu = await ask(editor, 'plate-9.jpg');
    assert.doesNotMatch(menu, /Convert|preview/);
    await press('Escape');
  });
});
