import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { closeAll, extension, inWorkspace, problems, rulesOn, until } from '../../editor';
import { messageText, screenshot, toastPress, workbenchEval } from '../../window';

const textOf = (file: string) => fs.readFile(inWorkspace(file).fsPath, 'utf8');

describe('a picture that gets another name', () => {
  const files = ['chapters/one.md', 'plates.tex'];
  const stored = new Map<string, string>();
  const rename = async (from: string, to: string) => {
    const edit = new vscode.WorkspaceEdit();
    edit.renameFile(inWorkspace(from), inWorkspace(to));
    assert.equal(await vscode.workspace.applyEdit(edit), true);
  };
  const areFound = (name: string, on = files) =>
    until(
      `findings on ${name}`,
      () =>
        new Set(
          problems().flatMap(({ file, diagnostic }) => (diagnostic.message.startsWith(name) ? file : [])),
        ),
      found => on.every(file => found.has(file)),
    );

  before(async () => {
    await extension().activate();
    for (const file of files) stored.set(file, await textOf(file));
    await areFound('plate-6');
  });
  afterEach(async () => {
    await closeAll();
    for (const [file, text] of stored) await fs.writeFile(inWorkspace(file).fsPath, text);
    await fs
      .rename(inWorkspace('pictures/stamp.png').fsPath, inWorkspace('pictures/plate-6.png').fsPath)
      .catch(() => {});
    for (const folder of ['part', 'deep'])
      await fs.rm(inWorkspace(folder).fsPath, { recursive: true, force: true });
    await until(
      'the picture as it was',
      () => rulesOn('pictures/plate-6.png'),
      rules => rules.includes('residual-chroma'),
    );
    await areFound('plate-6');
  });

  it('takes its lines along once that is wanted, in every layout, saved', async () => {
    await rename('pictures/plate-6.png', 'pictures/stamp.png');
    await messageText(
      /plate-6\.png would be missing in print: the old name still stands in chapters\/one\.md, plates\.tex/,
    );
    await screenshot('layout-renamed');
    // only an error that asks is kept in sight by the editor
    await workbenchEval('.notification-toast .codicon-error', 'element.className');
    assert.equal(await textOf('chapters/one.md'), stored.get('chapters/one.md'), 'nothing unasked');
    await toastPress('Change the lines');
    await until(
      'the line',
      () => textOf('chapters/one.md'),
      text => text.includes('(../pictures/stamp.png)'),
    );
    await until(
      'the other line',
      () => textOf('plates.tex'),
      text => /\{stamp(\.png)?\}/.test(text),
    );
    await areFound('stamp.png');
  });

  it('leaves lines whose text is another meanwhile, changes the others, and says so', async () => {
    await rename('pictures/plate-6.png', 'pictures/stamp.png');
    await messageText(/the old name still stands in chapters\/one\.md, plates\.tex/);
    const moved = `A line.\n\n${stored.get('chapters/one.md')}`;
    await fs.writeFile(inWorkspace('chapters/one.md').fsPath, moved);
    // a text that is open follows its file in its own time
    await until(
      'the text',
      async () => (await vscode.workspace.openTextDocument(inWorkspace('chapters/one.md'))).getText(),
      text => text === moved,
    );
    await toastPress('Change the lines');
    await messageText(/Left as they are: 1 of 2 lines, in chapters\/one\.md\. Look at them/);
    await screenshot('layout-renamed-left');
    assert.match(await textOf('plates.tex'), /\{stamp(\.png)?\}/);
    assert.equal(await textOf('chapters/one.md'), moved);
  });

  it('goes with its layout in a folder: lines that stay right stay, the others are right from there', async () => {
    const at = (file: string) => inWorkspace(file).fsPath;
    await fs.mkdir(at('part'));
    await fs.copyFile(at('pictures/plate-6.png'), at('part/own.png'));
    await fs.writeFile(at('part/text.md'), '![Own](own.png)\n![One](../pictures/plate-1.jpg)\n');
    const one = stored.get('chapters/one.md')!;
    await fs.writeFile(at('chapters/one.md'), one.replace('../pictures/plate-6.png', '../part/own.png'));
    await areFound('own.png', ['chapters/one.md', 'part/text.md']);
    await rename('part', 'deep/part');
    await messageText(
      /after the renaming, paths in chapters\/one\.md, deep\/part\/text\.md do not lead to them/,
    );
    await screenshot('layout-renamed-folder');
    await toastPress('Change the lines');
    await until(
      'the line',
      () => textOf('deep/part/text.md'),
      text => text === '![Own](own.png)\n![One](../../pictures/plate-1.jpg)\n',
    );
    await until(
      'the other line',
      () => textOf('chapters/one.md'),
      text => text === one.replace('../pictures/plate-6.png', '../deep/part/own.png'),
    );
    await areFound('own.png', ['chapters/one.md', 'deep/part/text.md']);
  });

  it('says what could not be saved', async () => {
    const file = inWorkspace('chapters/one.md');
    await rename('pictures/plate-6.png', 'pictures/stamp.png');
    await messageText(/the old name still stands in chapters\/one\.md, plates\.tex/);
    const inTheWay = async () => {
      await fs.rm(file.fsPath);
      await fs.mkdir(file.fsPath);
      return [];
    };
    const saving = vscode.workspace.onWillSaveTextDocument(event => {
      if (event.document.uri.path === file.path) event.waitUntil(inTheWay());
    });
    try {
      await toastPress('Change the lines');
      const told = await messageText(/Saving failed: chapters\/one\.md\. The line is changed in the editor/);
      assert.doesNotMatch(told, /Changes of yours/);
      assert.match(await textOf('plates.tex'), /\{stamp(\.png)?\}/);
    } finally {
      saving.dispose();
      await fs.rmdir(file.fsPath);
      await fs.writeFile(file.fsPath, stored.get('chapters/one.md')!);
      await vscode.window.showTextDocument(file);
      await vscode.commands.executeCommand('workbench.action.files.revert');
    }
  });
});
