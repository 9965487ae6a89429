import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { bookRead, closeAll, inWorkspace, sleep, until } from '../../editor';
import { hoverText, showsPictures } from '../../hover';
import { pointAt } from '../../quick-fix';
import { press, screenshot } from '../../window';

/** What is told, with its pictures, of the path that the cursor is on: asked by the keyboard, again where it went away. */
async function told(file: string, path: string) {
  const editor = await vscode.window.showTextDocument(inWorkspace(file));
  await pointAt(editor, path);
  return until(
    `the hover of ${path}`,
    async () => {
      if (!(await hoverText())) {
        await press('Control+k');
        await press('Control+i');
        await sleep(500);
      }
      return (await showsPictures()) ? hoverText() : '';
    },
    text => /Show how it prints/.test(text),
  );
}

describe('the path of a picture in every language of layouts', () => {
  before(bookRead);
  afterEach(closeAll);

  // 480 pixels across
  const lines: [file: string, path: string, width: number, ppi: number][] = [
    ['cover.typ', 'plate-1.jpg', 50, 244],
    ['page.html', 'plate-2.jpg', 60, 203],
    ['page.css', 'plate-3.jpg', 70, 174],
    ['book.adoc', 'plate-4.jpg', 80, 152],
  ];
  for (const [file, path, width, ppi] of lines)
    it(`shows the picture, how it is stored and printed, and its resolution as placed: ${file}`, async () => {
      const text = await told(file, path);
      assert.match(text, /Equal red, green and blue \(rgb-neutral\)/);
      assert.match(text, new RegExp(`· ${ppi} pixels per inch at a width of ${width} mm`));
      assert.match(text, /A tint is seen in .+ orders? of (10|20)/);
      assert.match(text, /ten possible orders, a row each: not the colours that it will have/);
      await screenshot(`fixes-hover-${file.split('.')[1]}`);
    });
});
