import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import path from 'node:path';
import * as vscode from 'vscode';
import { extension, inWorkspace, rulesOn, spare, until } from '../../editor';
import { decoderOf, readers } from '../../processes';
import { screenshot, webviewCount, webviewEval, webviewText, workbenchText } from '../../window';

const INKS = 'pictures/plate-7.tif';
const GOOD = 'pictures/plate-1.jpg';
const everywhere = process.env.E2E_PACKAGE === 'universal';

const found = (file: string, rule: string) =>
  until(
    `${rule} on ${file}`,
    () => rulesOn(file),
    rules => rules.includes(rule),
    // WebAssembly on a busy machine
    60_000,
  );

/** The decoder that a picture is read with now: readers at rest are ended first. */
async function decoderNow(): Promise<string> {
  for (const { pid } of readers()) process.kill(pid, 'SIGKILL');
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  await vscode.commands.executeCommand('vscode.open', inWorkspace(INKS));
  await until(
    'the picture',
    // how large it is drawn is told once it is drawn
    () => webviewEval<string>('#zoom-told', 'element.textContent'),
    size => size.endsWith('%'),
  );
  const [reader] = await until('a reader', readers, list => list.length > 0);
  return decoderOf(reader);
}

describe(`the package for ${process.env.E2E_PACKAGE}, installed`, () => {
  const home = () => extension().extensionUri.fsPath;

  it('is what runs, not the working tree', async () => {
    assert.match(path.basename(home()), /^evengrey\.evengrey-\d/);
    assert.equal((await fs.readdir(home())).includes('src'), false);
  });

  it('is as trusted as it is said to be', () => {
    assert.equal(vscode.workspace.isTrusted, !everywhere);
  });

  it('wakes by itself where there is a book, and says what is wrong with it', async () => {
    await until(
      'activation',
      () => extension().isActive,
      isActive => isActive,
    );
    await found(INKS, 'encoding-not-accepted');
    assert.ok(rulesOn('pictures/plate-6.png').includes('residual-chroma'));
    assert.deepEqual(rulesOn(GOOD), []);
    await workbenchText('.statusbar', /to put right/);
  });

  it('explains a rule', async () => {
    await vscode.commands.executeCommand('evengrey.explainRule', 'encoding-not-accepted');
    await workbenchText('.tabs-container', /encoding-not-accepted/);
    await webviewText('body.vscode-body', /\w/);
  });

  it('shows how a picture prints', async () => {
    await vscode.commands.executeCommand('vscode.open', inWorkspace(INKS));
    const text = await webviewText('main', /How it may print/);
    assert.match(text, /Convert it first/);
    assert.match(text, /TIFF, 480 × 320 pixels/);
    assert.match(text, /A screen is no proof/);
    await screenshot(`installed-${process.env.E2E_PACKAGE}`);
  });

  it('draws the pictures of the whole book', async () => {
    await vscode.commands.executeCommand('evengrey.showBook');
    await until(
      'pictures',
      () => webviewCount('main img[src^="blob:"]'),
      count => count > 0,
    );
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
  });

  it(`reads with ${everywhere ? 'WebAssembly' : 'its native decoder'}`, async () => {
    assert.equal(await decoderNow(), everywhere ? 'wasm' : 'native');
  });

  if (!everywhere)
    it('reads on with WebAssembly when its native decoder is gone', async () => {
      const parts = path.join(home(), 'node_modules/@img');
      for (const part of await fs.readdir(parts))
        if (/^sharp-(?!wasm32)/.test(part)) await fs.rm(path.join(parts, part), { recursive: true });
      assert.equal(await decoderNow(), 'wasm');
      const good = await fs.readFile(inWorkspace(GOOD).fsPath);
      await fs.copyFile(path.join(spare(), 'stained.jpg'), inWorkspace(GOOD).fsPath);
      await found(GOOD, 'residual-chroma');
      // the next package is tested on the same book
      await fs.writeFile(inWorkspace(GOOD).fsPath, good);
    });
});
