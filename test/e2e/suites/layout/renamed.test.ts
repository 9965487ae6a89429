import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { closeAll, extension, inWorkspace, problems, until } from '../../editor';
import { messageText, screenshot, toastPress } from '../../window';

const textOf = (file: string) => fs.readFile(inWorkspace(file).fsPath, 'utf8');

describe('a picture that gets another name', () => {
  const files = ['chapters/one.md', 'plates.tex'];
  const stored = new Map<string, string>();
  const rename = async (from: string, to: string) => {
    const edit = new vscode.WorkspaceEdit();
    edit.renameFile(inWorkspace(from), inWorkspace(to));
    assert.equal(await vscode.workspace.applyEdit(edit), true);
  };
  const areFound = (name: string) =>
    until(
      `findings on ${name}`,
      () =>
        problems().filter(
          ({ file, diagnostic }) => files.includes(file) && diagnostic.message.startsWith(name),
        ).length,
      n => n > 1,
    );

  before(async () => {
    await extension().activate();
    for (const file of files) stored.set(file, await textOf(file));
    await areFound('plate-6');
  });
  after(async () => {
    await closeAll();
    for (const [file, text] of stored) await fs.writeFile(inWorkspace(file).fsPath, text);
    await fs
      .rename(inWorkspace('pictures/stamp.png').fsPath, inWorkspace('pictures/plate-6.png').fsPath)
      .catch(() => {});
    await areFound('plate-6');
  });

  it('takes its lines along once that is wanted, in every layout, saved', async () => {
    await rename('pictures/plate-6.png', 'pictures/stamp.png');
    await messageText(
      /plate-6\.png would be missing in print: the old name still stands in chapters\/one\.md, plates\.tex/,
    );
    await screenshot('layout-renamed');
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
});
