import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { bookRead, closeAll, inWorkspace, problems, until } from '../../editor';
import { messageText, screenshot, toastPress } from '../../window';
import { write } from './write';

const at = (file: string) => inWorkspace(file).fsPath;
const rename = async (from: string, to: string) => {
  const edit = new vscode.WorkspaceEdit();
  edit.renameFile(inWorkspace(from), inWorkspace(to));
  await vscode.workspace.applyEdit(edit);
};
const areRead = (all: string[], none: string[]) =>
  until(
    `findings on ${all}, none on ${none}`,
    () => problems().map(({ file }) => file),
    files => all.every(file => files.includes(file)) && !none.some(file => files.includes(file)),
  );

describe('a layout that the settings name, and that gets another name', () => {
  let told: string;

  before(async () => {
    await bookRead();
    told = await fs.readFile(at('evengrey.json'), 'utf8');
    const layouts = ['text.md', 'plates.tex'];
    await write('evengrey.json', `${JSON.stringify({ ...JSON.parse(told), layouts }, null, 2)}\n`);
    await areRead(layouts, ['page.html']);
  });
  after(async () => {
    await closeAll();
    await fs.rename(at('words.md'), at('text.md'));
    await write('evengrey.json', told);
    await areRead(['text.md', 'page.html'], ['words.md']);
  });

  it('is named so by them once that is wanted, and goes on being read', async () => {
    await rename('text.md', 'words.md');
    await messageText(
      /text\.md would not count as before, .* unchecked: the old name still stands in evengrey\.json/,
    );
    await screenshot('fixes-layout-renamed');
    await toastPress('Change the lines');
    await until(
      'the settings',
      () => fs.readFile(at('evengrey.json'), 'utf8'),
      text => /"layouts": \[\s*"words\.md",\s*"plates\.tex"\s*\]/.test(text),
    );
    await areRead(['words.md', 'plates.tex'], ['text.md', 'page.html']);
  });
});
