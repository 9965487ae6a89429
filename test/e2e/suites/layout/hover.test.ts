import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, extension, inEachTheme, inWorkspace, problems, sleep, until } from '../../editor';
import { HOVER, hoverPictures, hoverText } from '../../hover';
import {
  screenshot,
  webviewText,
  workbenchClick,
  workbenchEval,
  workbenchHover,
  workbenchText,
} from '../../window';

const SPAN = '.monaco-editor .view-line > span > span';

async function pointAt(file: string, path: string) {
  await vscode.window.showTextDocument(inWorkspace(file));
  // an editor that has just been opened may lay itself out under the pointer: it is pointed at until it tells
  return until(
    `the hover of ${path}`,
    async () => {
      await workbenchHover(SPAN, path);
      await sleep(1000);
      return hoverText();
    },
    text => /Show how it prints/.test(text),
  );
}

describe('the path of a picture, pointed at', () => {
  before(async () => {
    await extension().activate();
    await until(
      'findings on a layout',
      () => problems().filter(({ file }) => file === 'plates.tex').length,
      n => n > 0,
    );
  });
  afterEach(closeAll);

  it('shows the picture, its encoding, and one sentence of what to expect of it', async () => {
    const text = await pointAt('chapters/one.md', 'plate-6.png');
    assert.match(text, /Grey with left-over colour \(rgb-residual\)/);
    assert.match(text, /A tint is seen in .+ orders? of (10|20)/);
    assert.equal(
      await workbenchEval(
        HOVER,
        'Boolean([...element.querySelectorAll("img")].find(img => img.src.startsWith("data:image/svg")).compareDocumentPosition(element.querySelector("strong")) & Node.DOCUMENT_POSITION_PRECEDING)',
      ),
      false,
      'the picture stands before the words',
    );
    assert.match(text, /Offset/);
    assert.match(text, /ten possible orders, a row each: not the colours that it will have\.\s+A tint/);
    assert.match(text, /seen in (\d|all|none) of these ten, drawn from all possible orders/);
    assert.equal(text.match(/&\w+;|\\|data:image|\*\*/), null);
    await hoverPictures();
  });

  it('leads to the preview and to the pages of its rules', async () => {
    await pointAt('chapters/one.md', 'plate-6.png');
    await workbenchClick(`${HOVER} a`, 'residual-chroma');
    await workbenchText('.tabs-container', /residual-chroma/);
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    await pointAt('chapters/one.md', 'plate-6.png');
    await workbenchClick(`${HOVER} a`, 'Show how it prints');
    await webviewText('main', /plate-6\.png/);
  });

  it('shows pictures that the editor itself cannot show', async () => {
    const text = await pointAt('plates.tex', 'plate-7.tif');
    assert.match(text, /Grey of four inks/);
    assert.match(text, /Convert it first · \d+ pixels per inch at a width of 50 mm/);
    await screenshot('layout-hover-verdict');
    await until(
      'its thumbnail',
      () => workbenchEval(HOVER, 'element.querySelector("img").naturalWidth'),
      width => width === 120,
    );
  });

  it('says of one that is in no book just what it is', async () => {
    const settings = inWorkspace('evengrey.json');
    const told = await vscode.workspace.fs.readFile(settings);
    const only = JSON.stringify({ ...JSON.parse(told.toString()), pictures: ['pictures/plate-6.png'] });
    await vscode.workspace.fs.writeFile(settings, Buffer.from(only));
    const isFound = () => problems().some(({ file }) => file === 'pictures/plate-7.tif');
    try {
      await until('one picture alone', isFound, is => !is);
      const text = await pointAt('chapters/one.md', 'plate-1.jpg');
      assert.match(text, /Equal red, green and blue/);
      assert.match(text, /no picture of the book, so that nothing is foretold/);
      assert.doesNotMatch(text, /orders/);
    } finally {
      await vscode.workspace.fs.writeFile(settings, told);
    }
    await until('the book as it was', isFound, is => is);
  });

  inEachTheme('is readable', async theme => {
    await pointAt('chapters/one.md', 'plate-6.png');
    await screenshot(`layout-hover-${theme}`);
  });
});
