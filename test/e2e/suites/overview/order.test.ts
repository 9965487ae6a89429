import fs from 'node:fs/promises';
import path from 'node:path';
import * as vscode from 'vscode';
import { bookRead, closeAll, inWorkspace, until } from '../../editor';
import { screenshot, webviewEval, webviewText } from '../../window';

const LAYOUT = inWorkspace('book.md').fsPath;
/** `plate-2` faces `plate-7`, as the settings say. */
const PLACED = [
  'plate-6.png',
  'plate-4.jpg',
  'plate-5.jpg',
  'plate-1.jpg',
  'plate-2.jpg',
  'plate-3.jpg',
  'plate-7.tif',
];
const IN_ORDER = 'plate-6.png plate-4.jpg plate-5.jpg plate-1.jpg plate-2.jpg plate-7.tif plate-3.jpg';
const BY_NAME = 'plate-1.jpg plate-2.jpg plate-7.tif plate-3.jpg plate-4.jpg plate-5.jpg plate-6.png';

/** Waits until the whole book is shown in this order. */
async function shows(order: string): Promise<void> {
  await vscode.commands.executeCommand('evengrey.showBook');
  await webviewText('.book .verdict');
  const names = () =>
    webviewEval<string[]>(
      '#contacts',
      "[...element.querySelectorAll('.contact .name')].map(name => name.textContent)",
    );
  await until(
    'the order of the book',
    async () => (await names()).map(name => path.posix.basename(name)).join(' '),
    shown => shown === order,
  );
}

describe('the order of a book that is laid out', () => {
  before(async () => {
    await bookRead();
    await shows(BY_NAME);
    await fs.writeFile(LAYOUT, PLACED.map(name => `![](pictures/${name})\n`).join('\n'));
  });
  after(async () => {
    await fs.rm(LAYOUT);
    await shows(BY_NAME);
    await closeAll();
  });

  it('is that of its layouts, but for what the settings have face each other', async () => {
    await shows(IN_ORDER);
    await screenshot('overview-laid-out');
  });

  it('is what the page of a picture leads on by', async () => {
    await shows(IN_ORDER);
    await vscode.commands.executeCommand(
      'vscode.openWith',
      inWorkspace('pictures/plate-5.jpg'),
      'evengrey.picture',
    );
    await webviewText('.neighbours', /← plate-4\.jpg\s+plate-1\.jpg →/);
  });
});
