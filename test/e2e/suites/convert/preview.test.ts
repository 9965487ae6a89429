import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { bookRead, closeAll, inEachTheme, inWorkspace, until } from '../../editor';
import {
  press,
  screenshot,
  webviewClick,
  webviewCount,
  webviewDrag,
  webviewEval,
  webviewText,
  workbenchClick,
  workbenchText,
} from '../../window';

const GARDEN = inWorkspace('pictures/garden.jpg');
const INKS = inWorkspace('pictures/plate-7.tif');
const PREVIEW = 'evengrey.picture';

const bar = () => webviewEval<number>('#wipe', 'Number(element.getAttribute("aria-valuenow"))');
const clip = () => webviewEval<string>('.pane.after', 'element.style.clipPath');
/** What the upper picture is made of: changes with every candidate. */
const address = () => webviewEval<string>('.pane.after img', 'element.src');
const near = () => webviewEval('#remedy', 'element.scrollIntoView()');

async function openGarden() {
  await vscode.commands.executeCommand('vscode.openWith', GARDEN, PREVIEW);
  await webviewText('#remedy', /Before and after/);
  await near();
  await webviewText('#remedy-outcome', /What is done/);
}

describe('before and after in the preview', () => {
  before(bookRead);
  afterEach(closeAll);

  it('is where the advice leads, with the recommended encoding chosen', async () => {
    await vscode.commands.executeCommand('vscode.open', INKS);
    await webviewText('.advice', /Convert it first/);
    await webviewClick('.advice #lead');
    assert.match(await webviewText('#remedy-does', /Recommended here/), /most of this part of the book/);
    assert.equal(await webviewEval('#remedy', 'document.activeElement.id'), 'to-rgb-neutral');
    const done = await webviewText('#remedy-outcome', /What is done/);
    assert.match(done, /four-channel becomes equal red, green and blue rgb-neutral/);
    assert.match(done, /its lightness off by L\* \d\.\d+ at most/);
    const top = await webviewEval<number>('#remedy', 'element.getBoundingClientRect().top');
    assert.ok(top < 400, `it is in sight: ${top}`);
  });

  it('says what changes in the forecast, as a table', async () => {
    await vscode.commands.executeCommand('vscode.open', INKS);
    await webviewClick('.advice #lead');
    const table = await webviewText('.changes', /As it would be/);
    assert.match(table, /A tint\s*A tint is seen in about \d/);
    assert.match(table, /Orders of 10 without a visible tint/);
    assert.match(table, /Deepest black, L\*/);
  });

  it('writes nothing until it is asked to', async () => {
    const before = await fs.readdir(inWorkspace('pictures').fsPath);
    await openGarden();
    assert.deepEqual(await fs.readdir(inWorkspace('pictures').fsPath), before);
  });

  it('says beforehand what the layouts make of the result', async () => {
    await openGarden();
    assert.match(
      await webviewText('#remedy-outcome', /PNG/),
      /Where the layouts are to place the result, it is a PNG instead: browsers show no TIFF, and book\.md:7/,
    );
    await webviewClick('label[for="to-black-only"]');
    const refused = await webviewText('#remedy-outcome', /could not place/);
    assert.match(
      refused,
      /book\.md:7 could not place the result\. "pictures\/garden\.jpg" stays on the page/,
    );
    await webviewEval('#remedy-outcome', 'element.scrollIntoView()');
    await screenshot('convert-preview-layouts');
  });

  it('is wiped by keys and by the pointer', async () => {
    await openGarden();
    assert.equal(await bar(), 50);
    assert.equal(
      await webviewEval('#wipe', 'element.getAttribute("role") + element.getAttribute("aria-label").length'),
      'slider48',
    );
    await webviewEval('#wipe', 'element.focus()');
    await press('ArrowLeft');
    assert.equal(await bar(), 48);
    await press('PageUp');
    assert.equal(await bar(), 58);
    assert.equal(await clip(), 'inset(0px 0px 0px 58%)');
    assert.match(
      await webviewEval<string>('#wipe', 'element.getAttribute("aria-valuetext")'),
      /58 % from the left as it is/,
    );
    await press('End');
    assert.equal(await bar(), 100);
    await press('Home');
    assert.equal(await bar(), 0);
    await webviewDrag('.pane.before', 0, 0);
    assert.ok(Math.abs((await bar()) - 50) <= 1, 'the bar comes to the pointer');
    await webviewDrag('#wipe', 150, 0);
    assert.ok((await bar()) > 55, 'and is dragged');
  });

  it('stands side by side at one zoom and one place', async () => {
    await openGarden();
    await webviewClick('label[for="view-sides"]');
    const box = (side: string) =>
      webviewEval<{ left: number; right: number; width: number }>(
        `.pane.${side}`,
        'element.getBoundingClientRect().toJSON()',
      );
    const [before, after] = [await box('before'), await box('after')];
    assert.ok(before.right < after.left);
    await webviewClick('label[for="zoom-4"]');
    const width = (side: string) => webviewEval<string>(`.pane.${side} img`, 'element.style.width');
    assert.equal(await width('before'), await width('after'));
    await webviewEval('.pane.before', 'element.scrollTo(120, 60)');
    await until(
      'the other to follow',
      () => webviewEval<number[]>('.pane.after', '[element.scrollLeft, element.scrollTop]'),
      at => at[0] === 120 && at[1] === 60,
    );
    await webviewDrag('.pane.after', -50, -20);
    const at = await webviewEval<number[]>('.pane.before', '[element.scrollLeft, element.scrollTop]');
    assert.deepEqual(at, [170, 80]);
  });

  it('shows all ways to grey on the picture itself, each by what it does; one is chosen by key', async () => {
    await openGarden();
    await until(
      'the small pictures',
      () => webviewCount('.small-picture img'),
      n => n === 9,
    );
    assert.match(await webviewText('.gallery'), /Darkens a blue sky/);
    const first = await address();
    await webviewEval('#method-lightness + label', 'element.previousElementSibling.focus()');
    await press('ArrowRight');
    await until('another picture', address, now => now !== first);
    assert.equal(await webviewEval('#method-luma + label', 'element.previousElementSibling.checked'), true);
  });

  it('keeps what was chosen while it is hidden', async () => {
    await openGarden();
    await webviewClick('label[for="to-single-channel"]');
    await webviewClick('label[for="method-darker-sky"]');
    await webviewEval('#wipe', 'element.focus()');
    await press('ArrowRight');
    await vscode.commands.executeCommand('vscode.open', inWorkspace('evengrey.json'), { preview: false });
    await vscode.commands.executeCommand('vscode.openWith', GARDEN, PREVIEW);
    await near();
    await webviewText('#remedy-outcome', /single-channel/);
    assert.equal(await bar(), 52);
    assert.equal(
      await webviewEval('#method-darker-sky + label', 'element.previousElementSibling.checked'),
      true,
    );
  });

  it('converts as is chosen, asks only where, and says what was done with its proof', async () => {
    await openGarden();
    await webviewClick('label[for="to-single-channel"]');
    await webviewClick('label[for="method-darker-sky"]');
    await webviewClick('#convert');
    await workbenchText('.quick-input-title', /^Convert garden\.jpg$/);
    await workbenchClick('.quick-input-list .monaco-list-row', 'Beside the picture');
    const done = await webviewText('#remedy-done', /is written/);
    assert.match(done, /garden\.jpg\.single-channel\.tif is written\. Read again: single-channel/);
    assert.match(done, /L\* \d\.\d+ at most/);
    const written = inWorkspace('pictures/garden.jpg.single-channel.tif');
    assert.ok((await fs.stat(written.fsPath)).size > 1000);
    await fs.rm(written.fsPath);
  });

  it('says why a picture cannot be converted so', async () => {
    const pages = inWorkspace('pictures/two-pages.tif');
    await fs.copyFile(vscode.Uri.joinPath(inWorkspace(''), '../spare/two-pages.tif').fsPath, pages.fsPath);
    try {
      await vscode.commands.executeCommand('vscode.open', pages);
      await webviewText('#remedy', /Before and after/);
      await near();
      await webviewText('#remedy-status', /holds 2 pages/);
    } finally {
      await fs.rm(pages.fsPath);
    }
  });

  inEachTheme('is readable', async theme => {
    await openGarden();
    await until(
      'the small pictures',
      () => webviewCount('.small-picture img'),
      n => n === 9,
    );
    await webviewEval('#wipe', 'element.focus()');
    await near();
    await screenshot(`remedy-${theme}`, { height: 1800 });
    await vscode.commands.executeCommand('vscode.open', INKS);
    await webviewClick('.advice #lead');
    await webviewText('#remedy-outcome', /What is done/);
    await screenshot(`remedy-inks-${theme}`, { height: 1300 });
  });
});
