import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { bookRead, closeAll, inWorkspace, problems, until } from '../../editor';
import { ask, choose } from '../../quick-fix';
import { messageText, screenshot, toastPress } from '../../window';

describe('on the line of a picture whose name says another format', () => {
  before(bookRead);
  afterEach(closeAll);

  it('it gets the name of its content, and its line goes along', async () => {
    const picture = (name: string) => inWorkspace(`pictures/${name}`);
    const layout = inWorkspace('misnamed.md');
    await fs.copyFile(picture('plate-6.png').fsPath, picture('misnamed.jpg').fsPath);
    await fs.writeFile(layout.fsPath, '![](pictures/misnamed.jpg)\n');
    try {
      const editor = await vscode.window.showTextDocument(layout);
      await until(
        'its finding',
        () =>
          problems().some(
            ({ file, diagnostic }) => file === 'misnamed.md' && /Rename it to \.png/.test(diagnostic.message),
          ),
        Boolean,
      );
      await ask(editor, 'misnamed.jpg');
      await screenshot('fixes-misnamed');
      await choose('Rename it to misnamed.png');
      await messageText(/misnamed\.jpg would be missing in print/);
      await toastPress('Change the lines');
      await until(
        'the line',
        () => editor.document.getText(),
        text => text === '![](pictures/misnamed.png)\n',
      );
      await fs.access(picture('misnamed.png').fsPath);
    } finally {
      await fs.rm(layout.fsPath);
      for (const name of ['misnamed.jpg', 'misnamed.png']) await fs.rm(picture(name).fsPath, { force: true });
    }
  });
});
