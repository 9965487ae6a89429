import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { bookRead, closeAll, inWorkspace, until } from '../../editor';
import { messageText, screenshot, toastPress, webviewClick, webviewText } from '../../window';
import { write } from './write';

const layout = () => fs.readFile(inWorkspace('page.html').fsPath, 'utf8');

describe('on the page of a picture whose format alone cannot be placed', () => {
  let stored: string;

  before(async () => {
    await bookRead();
    stored = await layout();
  });
  afterEach(async () => {
    await closeAll();
    await write('page.html', stored);
  });

  it('what is to be done first is done by its button, as on the line, and is taken back', async () => {
    await vscode.commands.executeCommand(
      'vscode.openWith',
      inWorkspace('pictures/plate-8.tif'),
      'evengrey.tiff',
    );
    await webviewText('.advice', /Have a PNG of it placed first/);
    await screenshot('fixes-page');
    await webviewClick('#place');
    await messageText(/plate-8\.tif\.rgb-neutral\.png is written/);
    await until(
      'the line',
      layout,
      text => text === stored.replace('plate-8.tif', 'plate-8.tif.rgb-neutral.png'),
    );
    await toastPress('Undo');
    await until('the line as it was', layout, text => text === stored);
  });
});
