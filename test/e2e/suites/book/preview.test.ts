import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import path from 'node:path';
import * as vscode from 'vscode';
import { bookRead, closeAll, inEachTheme, inWorkspace, rulesOn, spare, until } from '../../editor';
import {
  press,
  screenshot,
  webviewClick,
  webviewCount,
  webviewEval,
  webviewSelect,
  webviewText,
  workbenchText,
} from '../../window';

const INKS = inWorkspace('pictures/plate-7.tif');
const GOOD = inWorkspace('pictures/plate-1.jpg');
const PREVIEW = 'evengrey.picture';

const activeViewType = () => {
  const input = vscode.window.tabGroups.activeTabGroup.activeTab?.input;
  return input instanceof vscode.TabInputCustom ? input.viewType : undefined;
};

describe('preview of a picture', () => {
  before(bookRead);
  afterEach(closeAll);

  it('is how a TIFF opens, and says what to do, why, and how it is stored', async () => {
    await vscode.commands.executeCommand('vscode.open', INKS);
    const text = await webviewText('main', /How it may print/);
    assert.equal(activeViewType(), 'evengrey.tiff');
    assert.match(text, /plate-7\.tif/);
    assert.match(text, /Convert it first/);
    assert.match(text, /does not take/);
    assert.match(text, /four-channel/);
    assert.match(text, /TIFF, 480 × 320 pixels/);
    assert.match(text, /encoding-not-accepted/);
  });

  it('shows the picture on a neutral ground', async () => {
    await vscode.commands.executeCommand('vscode.open', INKS);
    await webviewText('main', /How it may print/);
    // its 480 pixels on as many of the screen, light at the top and dark at the bottom
    await webviewText('#zoom-told', /%/);
    const [top, bottom] = await webviewEval<number[]>(
      '#picture',
      `[0.2, 0.8].map(share => element.getContext('2d').getImageData(element.width / 2, element.height * share, 1, 1).data[0])`,
    );
    assert.ok(top > 150 && bottom < 100, `${top}, ${bottom}`);
    const ground = await webviewEval<string>('.picture', 'getComputedStyle(element).backgroundColor');
    const [, r, g, b] = /rgb\((\d+), (\d+), (\d+)\)/.exec(ground)!;
    assert.ok(r === g && g === b, ground);
  });

  it('is opened beside the built-in preview on request', async () => {
    await vscode.commands.executeCommand('vscode.open', GOOD);
    await until(
      'the built-in preview',
      activeViewType,
      viewType => viewType === 'imagePreview.previewEditor',
    );
    await vscode.commands.executeCommand('evengrey.openPreview');
    await webviewText('main', /Send it as it is/);
    assert.equal(activeViewType(), PREVIEW);
  });

  it('forecasts with its doubts: as one possible order, by probability, and as no proof', async () => {
    await vscode.commands.executeCommand('vscode.openWith', GOOD, PREVIEW);
    const text = await webviewText('main', /In numbers/);
    assert.match(text, /one possible order/);
    assert.match(text, /A screen is no proof: have a test print made before the run/);
    assert.match(text, /A tint is seen in (about|fewer|nearly)/);
    assert.match(text, /No predictable direction|It leans/);
    assert.match(text, /not your printer/);
    assert.match(await webviewText('table'), /Direction/);
  });

  it('draws ten orders, one of them large, and another on request', async () => {
    await vscode.commands.executeCommand('vscode.openWith', GOOD, PREVIEW);
    await webviewText('main', /In numbers/);
    assert.equal(await webviewCount('.condition .possible'), 10);
    const strip = () => webviewEval<string>('.strip:visible', 'element.outerHTML');
    const first = await strip();
    await webviewClick('label[for="order-3"]');
    const fourth = await strip();
    assert.notEqual(fourth, first);
    await webviewClick('#others');
    await until('another drawing', strip, html => html !== fourth);
  });

  it('goes over all its controls by keyboard', async () => {
    await vscode.commands.executeCommand('vscode.openWith', GOOD, PREVIEW);
    await webviewClick('label[for="order-0"]');
    await webviewEval('#order-0', 'element.focus()');
    await press('ArrowRight');
    assert.equal(await webviewEval('#order-1 + label', 'element.previousElementSibling.checked'), true);
  });

  it('forecasts for another light', async () => {
    await vscode.commands.executeCommand('vscode.openWith', GOOD, PREVIEW);
    await webviewText('main', /viewing booth/);
    await webviewSelect('#light', 'A');
    await webviewText('main .condition', /Tungsten/);
  });

  it('keeps what was chosen while it is hidden', async () => {
    await vscode.commands.executeCommand('vscode.openWith', GOOD, PREVIEW, { preview: false });
    await webviewClick('label[for="order-6"]');
    await webviewClick('label[for="seen-beside"]');
    const chosen = async () => {
      for (const id of ['order-6', 'seen-beside'])
        assert.ok(await webviewEval(`#${id}:checked + label`, 'element.textContent'));
    };
    await chosen();
    await vscode.commands.executeCommand('vscode.open', inWorkspace('evengrey.json'), { preview: false });
    await vscode.commands.executeCommand('vscode.openWith', GOOD, PREVIEW);
    await webviewText('main', /In numbers/);
    await chosen();
  });

  it('explains a rule when its name is clicked', async () => {
    await vscode.commands.executeCommand('vscode.open', INKS);
    await webviewClick('button[data-rule="encoding-not-accepted"]');
    await webviewText('body.vscode-body', /encoding-not-accepted|not accepted/i);
    await workbenchText('.tabs-container', /encoding-not-accepted/);
  });

  it('follows the picture on disk', async () => {
    const bytes = await fs.readFile(INKS.fsPath);
    try {
      await vscode.commands.executeCommand('vscode.open', INKS);
      await webviewText('main', /Convert it first/);
      await fs.copyFile(path.join(spare(), 'neutral.tif'), INKS.fsPath);
      await webviewText('main', /Send it as it is/);
    } finally {
      await fs.writeFile(INKS.fsPath, bytes);
    }
    await until(
      'the book as it was',
      () => rulesOn('pictures/plate-7.tif'),
      rules => rules.length > 0,
    );
  });

  it('turns the pages of a file that has several', async () => {
    const file = inWorkspace('pictures/two-pages.tif');
    await fs.copyFile(path.join(spare(), 'two-pages.tif'), file.fsPath);
    try {
      await vscode.commands.executeCommand('vscode.open', file);
      await webviewText('.head', /1 of 2/);
      await webviewSelect('#page', '2');
      await webviewText('h1', /page 2/);
    } finally {
      await fs.rm(file.fsPath);
    }
  });

  it('says why a picture cannot be shown', async () => {
    const broken = inWorkspace('pictures/broken.tif');
    await fs.writeFile(broken.fsPath, 'II*\0 no picture at all');
    try {
      await vscode.commands.executeCommand('vscode.open', broken);
      await webviewText('main', /Put the file right first/);
      assert.match(await webviewText('.picture'), /\w/);
    } finally {
      await fs.rm(broken.fsPath);
    }
  });

  inEachTheme('is readable', async theme => {
    await vscode.commands.executeCommand('vscode.open', INKS);
    await webviewText('main', /In numbers/);
    const [page, ink] = await webviewEval<string[]>(
      'main',
      '[getComputedStyle(document.body).backgroundColor, getComputedStyle(element).color]',
    );
    assert.ok(contrast(page, ink) >= 4.5, `${ink} on ${page}`);
    await screenshot(`preview-${theme}`, { height: 1400 });
  });
});

/** Contrast ratio of two colours (WCAG 2.1, relative luminance). */
function contrast(x: string, y: string): number {
  const luminance = (colour: string) => {
    const [r, g, b] = (colour.match(/[\d.]+/g) ?? []).map(Number).map(v => {
      const c = v / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const [light, dark] = [luminance(x), luminance(y)].sort((p, q) => q - p);
  return (light + 0.05) / (dark + 0.05);
}
