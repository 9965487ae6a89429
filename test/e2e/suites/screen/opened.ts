import * as vscode from 'vscode';
import { extension, inWorkspace, rulesOn, until } from '../../editor';
import { webviewText } from '../../window';

/** The book was checked: what is said of a picture comes from it. */
export async function looked() {
  await extension().activate();
  await until(
    'findings',
    () => rulesOn('pictures/plate-2.png'),
    rules => rules.length > 0,
  );
}

/** A picture's page, filled, with the picture in it. */
export async function open(picture: string) {
  const editor = picture.endsWith('.tif') ? 'evengrey.tiff' : 'evengrey.picture';
  await vscode.commands.executeCommand('vscode.openWith', inWorkspace(picture), editor, { preview: false });
  await webviewText('h1', new RegExp(picture.split('/').at(-1)!.replace('.', '\\.')));
  await webviewText('#zoom-told', /%/);
}
