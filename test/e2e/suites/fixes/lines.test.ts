import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { bookRead, closeAll, inWorkspace, problems, until } from '../../editor';
import { ask, choose } from '../../quick-fix';
import { messageText, press, screenshot } from '../../window';
import { write } from './write';

const textOf = (file: string) => fs.readFile(inWorkspace(file).fsPath, 'utf8');
/** What is said of the picture that is not there. */
const MISSING = /^plate-9(\.jpg)?: .*It stays blank/;
const saidOn = (file: string) =>
  problems().flatMap(({ file: on, diagnostic }) => (on === file ? diagnostic.message : []));

async function open(file: string, said: RegExp) {
  const editor = await vscode.window.showTextDocument(inWorkspace(file));
  await until(
    `${said} on ${file}`,
    () => saidOn(file),
    all => all.some(message => said.test(message)),
  );
  return editor;
}

/** Undoes one step by the keyboard. */
async function undone({ document }: vscode.TextEditor, before: string) {
  await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
  await press('Control+z');
  await until(
    'the text as it was',
    () => document.getText(),
    text => text === before,
  );
}

describe('on the line of a picture that is missing', () => {
  before(bookRead);
  afterEach(async () => {
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    await closeAll();
  });

  const lines: [file: string, written: string, now: string][] = [
    ['text.md', '(pictures/plate-9.jpg)', '(found/plate-9.jpg)'],
    ['page.html', 'src="pictures/plate-9.jpg"', 'src="found/plate-9.jpg"'],
    ['page.css', 'url("pictures/plate-9.jpg")', 'url("found/plate-9.jpg")'],
    ['plates.tex', '{plate-9}', '{found/plate-9.jpg}'],
    ['cover.typ', '("pictures/plate-9.jpg"', '("found/plate-9.jpg"'],
    ['book.adoc', 'image::plate-9.jpg[]', 'image::../found/plate-9.jpg[]'],
  ];
  for (const [file, written, now] of lines)
    it(`another of its name can be placed instead: ${file}`, async () => {
      const editor = await open(file, MISSING);
      const before = editor.document.getText();
      const menu = await ask(editor, 'plate-9');
      const places = menu.match(/Place \S+ instead/g);
      assert.deepEqual(places, ['Place found/plate-9.jpg instead', 'Place found/old/Plate-9.png instead']);
      if (file === 'text.md') await screenshot('fixes-instead');
      await choose('Place found/plate-9.jpg instead');
      await until(
        'the path',
        () => editor.document.getText(),
        text => text === before.replace(written, now),
      );
      await until(
        'the finding to go',
        () => saidOn(file),
        all => !all.some(message => MISSING.test(message)),
      );
      await undone(editor, before);
    });
});

describe('on the line of a picture whose format alone is wrong', () => {
  const files = ['page.html', 'text.md'];
  const stored = new Map<string, string>();

  before(async () => {
    await bookRead();
    for (const file of files) stored.set(file, await textOf(file));
  });
  afterEach(async () => {
    await closeAll();
    for (const [file, text] of stored) await write(file, text);
    for (const name of await fs.readdir(inWorkspace('pictures').fsPath))
      if (/\.rgb-neutral\./.test(name)) await fs.rm(inWorkspace(`pictures/${name}`).fsPath);
  });

  it('it is written in one that can be placed, its tones as they are, and the line places that', async () => {
    const editor = await open('page.html', /^plate-8\.tif: The place of this picture stays blank/);
    const before = editor.document.getText();
    const menu = await ask(editor, 'plate-8.tif');
    assert.doesNotMatch(menu, /Convert/);
    await screenshot('fixes-format');
    await choose('Write it as PNG and place the result');
    assert.match(
      await messageText(/is written/),
      /plate-8\.tif\.rgb-neutral\.png is written\. Read again: rgb-neutral/,
    );
    await until(
      'the line',
      () => editor.document.getText(),
      text => text === before.replace('plate-8.tif', 'plate-8.tif.rgb-neutral.png'),
    );
    await until(
      'the finding to go',
      () => saidOn('page.html'),
      all => !all.some(message => /plate-8/.test(message)),
    );
    await screenshot('fixes-format-done');
  });

  it('where the layout has other tools too', async () => {
    const text = stored.get('text.md')!.replace('pictures/plate-6.png', 'pictures/plate-8.tif');
    await write('text.md', text);
    const page = stored.get('page.html')!.replace('plate-8.tif', 'plate-5.jpg');
    await write('page.html', page);
    const editor = await open('text.md', /^plate-8\.tif: This picture may be missing/);
    await ask(editor, 'plate-8.tif');
    await choose('Write it as PNG and place the result');
    await messageText(/is written/);
    await until(
      'the line',
      () => textOf('text.md'),
      now => now === text.replace('plate-8.tif', 'plate-8.tif.rgb-neutral.png'),
    );
  });
});

describe('on the line of a picture with left-over colour', () => {
  const settings = () => inWorkspace('evengrey.json');

  it('that can be said to be meant, which the settings list then', async () => {
    await bookRead();
    const told = await fs.readFile(settings().fsPath, 'utf8');
    try {
      const editor = await open('text.md', /^plate-6\.png: A coloured mark/);
      const menu = await ask(editor, 'plate-6.png');
      assert.ok(menu.indexOf('Convert to') < menu.indexOf('Its tone is meant'), menu);
      await choose('Its tone is meant: list it under "toned" in evengrey.json');
      await until(
        'the picture in the settings',
        () => fs.readFile(settings().fsPath, 'utf8'),
        text => /"intent": \{\s*"toned": \[\s*"pictures\/plate-6\.png"\s*\]\s*\}/.test(text),
      );
      await until(
        'the finding to go',
        () => saidOn('text.md'),
        all => !all.some(message => /coloured mark/.test(message)),
      );
    } finally {
      await closeAll();
      await write('evengrey.json', told);
    }
    await until(
      'the finding again',
      () => saidOn('text.md'),
      all => all.some(message => /coloured mark/.test(message)),
    );
  });
});
