import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs/promises';
import path from 'node:path';
import * as vscode from 'vscode';
import { bookRead, closeAll, inEachTheme, inWorkspace, sleep, until, workspace } from '../../editor';
import {
  press,
  screenshot,
  webviewAxe,
  webviewClick,
  webviewCount,
  webviewEval,
  webviewText,
  workbenchClick,
  workbenchMenu,
  workbenchText,
} from '../../window';

const ROW = '.scm-view .monaco-list-row';
const COMPARE = 'Compare How It Prints';
const git = (...args: string[]) =>
  execFileSync('git', ['-C', workspace().fsPath, ...args])
    .toString()
    .trim();

const uncommitted = async () => {
  await vscode.commands.executeCommand('evengrey.reviewUncommitted');
  await webviewText('.review h1', /since the last commit/);
};
const onBranch = async () => {
  await vscode.commands.executeCommand('evengrey.reviewBranch');
  await webviewText('.review h1', /on this branch/);
};
const rows = () =>
  webviewEval<string[]>(
    '.changed tbody',
    '[...element.rows].map(row => [...row.cells].map(cell => cell.innerText.replace(/\\s+/g, " ").trim()).join(" | "))',
  );
const bothDrawn = (ms?: number) =>
  until(
    'both pictures',
    () => webviewCount('.review .pane img'),
    n => n === 2,
    ms,
  );

describe('pictures changed in source control', () => {
  before(bookRead);
  afterEach(closeAll);

  it('are compared from the menu of the source-control view', async () => {
    await vscode.commands.executeCommand('workbench.view.scm');
    await workbenchText(ROW, /plate-6\.png/);
    await workbenchMenu(ROW, 'plate-6.png');
    await workbenchClick('.monaco-menu .action-item', COMPARE);
    await webviewText('.review h1', /^pictures\/plate-6\.png$/);
    assert.match(await webviewText('.review .verdict'), /Better than before: \d findings? ended/);
    assert.match(
      await webviewText('.review .terms'),
      /Before: the last commit \([0-9a-f]{10}\)\. After: the folder as it is now/,
    );
    assert.match(
      await webviewText('.review .comparison .sides'),
      /Before: rgb-residual[\s\S]*After: rgb-neutral/,
    );
    assert.match(await webviewText('[aria-label="Ended"]'), /residual-chroma/);
    assert.match(
      await webviewText('[aria-label="What differs"]'),
      /Encoding\s*Grey with left-over colour \(rgb-residual\)\s*Equal red, green and blue \(rgb-neutral\)/,
    );
    assert.match(
      await webviewText('.review [aria-label^="Before and after on"]'),
      /A tint[\s\S]*Before[\s\S]*After|Before[\s\S]*After[\s\S]*A tint/,
    );
    assert.match(await webviewText('#neighbours ~ ul'), /plate-5\.jpg[\s\S]*plate-6\.png[\s\S]*plate-7\.tif/);
  });

  it('are compared from the button above the two versions that the editor shows, and wiped between by keys', async () => {
    await vscode.commands.executeCommand('workbench.view.scm');
    await workbenchText(ROW, /plate-6\.png/);
    await workbenchClick(ROW, 'plate-6.png');
    await workbenchText('.tab.active', /plate-6\.png \(/);
    await workbenchClick(`.editor-actions a[aria-label*="${COMPARE}"]`);
    // in a browser, an editor's page that goes while its picture is on the way may hold up the next for half a minute
    await bothDrawn(45_000);
    await webviewClick('.review .wipe');
    await press('End');
    assert.match(
      await webviewEval('.review .wipe', 'element.getAttribute("aria-valuetext")'),
      /100 % from the left before, the rest after/,
    );
    assert.match(await webviewEval('.review .pane.after', 'element.style.clipPath'), /100%/);
    await webviewClick('label[for="view-sides"]');
    assert.equal(await webviewEval('.review .panes', 'element.dataset.view'), 'sides');
    await webviewClick('label[for="view-wipe"]');
  });

  it('show truly what git holds before, and the folder after', async () => {
    await vscode.commands.executeCommand('evengrey.compareChange', {
      resourceUri: inWorkspace('pictures/plate-6.png'),
    });
    await bothDrawn();
    // the red stamp of 20 x 20 at 20, 20 is in the committed one alone
    const pixel = (side: string) =>
      until(
        `a pixel ${side}`,
        () =>
          webviewEval<number[]>(
            `.review .pane.${side} img`,
            '(() => { if (!element.naturalWidth) return []; const c = document.createElement("canvas"); c.width = element.naturalWidth; c.height = element.naturalHeight; const g = c.getContext("2d"); g.drawImage(element, 0, 0); return [...g.getImageData(30, 30, 1, 1).data]; })()',
          ),
        found => found.length === 4,
      );
    const [red, green] = await pixel('before');
    assert.ok(red - green > 80, `${red} ${green}`);
    const [r, g, b] = await pixel('after');
    assert.deepEqual([r, g], [g, b]);
  });

  it('are all listed for the branch, committed or not, with a verdict each', async () => {
    await onBranch();
    const told = await rows();
    assert.deepEqual(
      told.map(row => row.split(' ')[0]),
      [
        'pictures/plate-1.jpg',
        'pictures/plate-20.jpg',
        'pictures/plate-3.jpg',
        'pictures/plate-6.png',
        'pictures/plate-8.png',
      ],
    );
    assert.match(told[0], /changed, .*\| Worse than before: \d new findings? \| [1-9]\d* \| 0$/);
    assert.match(told[1], /renamed from pictures\/plate-2\.jpg, content unchanged/);
    assert.match(told[2], /no longer in the book \| Gone from the book/);
    assert.match(told[3], /Better than before/);
    assert.match(told[4], /new, .*\| New, with \d findings? against it/);
    assert.match(await webviewText('.review .terms'), /Before: main \(parted at [0-9a-f]{10}\)/);
    await screenshot('review-list');
  });

  it('lead from the list to a picture, and back by keys', async () => {
    await onBranch();
    await webviewClick('[data-path="pictures/plate-1.jpg"]');
    await webviewText('.review h1', /plate-1\.jpg/);
    await bothDrawn();
    await webviewClick('#list');
    await webviewText('.review h1', /on this branch/);
  });

  it('that are new or gone are shown alone, and say so', async () => {
    await onBranch();
    await webviewClick('[data-path="pictures/plate-8.png"]');
    assert.match(await webviewText('.review .comparison .sides'), /^Now: rgb-residual$/);
    await until(
      'the picture',
      () => webviewCount('.apart img'),
      n => n === 1,
    );
    assert.match(await webviewText('.review [aria-label^="Before and after on"]'), /not in the book/);
    await webviewClick('#list');
    await webviewClick('[data-path="pictures/plate-3.jpg"]');
    assert.match(await webviewText('.review .comparison .sides'), /^Before: rgb-neutral$/);
    await until(
      'the picture',
      () => webviewCount('.apart img'),
      n => n === 1,
    );
  });

  it('say of one that is as it was that there is nothing to compare', async () => {
    await vscode.commands.executeCommand('evengrey.compareChange', inWorkspace('pictures/plate-4.jpg'));
    await webviewText('#told', /plate-4\.jpg is as it was/);
  });

  it('are compared again when a picture is saved', async () => {
    await uncommitted();
    const file = inWorkspace('pictures/plate-5.jpg').fsPath;
    const before = await fs.readFile(file);
    await fs.copyFile(inWorkspace('../spare/stained.jpg').fsPath, file);
    try {
      await webviewText('.changed', /plate-5\.jpg[\s\S]*Worse than before/);
    } finally {
      await fs.writeFile(file, before);
    }
    await until('the list as it was', rows, list => list.length === 1);
  });

  it('where the branch that others start from is not known, it is said how to name it', async () => {
    git('branch', '-m', 'main', 'book');
    const settings = vscode.workspace.getConfiguration('evengrey', workspace());
    try {
      await vscode.commands.executeCommand('evengrey.reviewBranch');
      await webviewText('.review .empty', /Name it in the setting "evengrey\.compareWith"/);
      await settings.update('compareWith', 'book', vscode.ConfigurationTarget.Global);
      await webviewClick('#again');
      await webviewText('.review .terms', /Before: book/);
    } finally {
      git('branch', '-m', 'book', 'main');
      await settings.update('compareWith', undefined, vscode.ConfigurationTarget.Global);
    }
  });

  it('without git it is said what to do', async () => {
    const at = inWorkspace('.git').fsPath;
    const aside = path.join(workspace().fsPath, '../git-aside');
    await fs.rename(at, aside);
    try {
      await vscode.commands.executeCommand('evengrey.reviewUncommitted');
      // the repository around this one, where there is one, ignores the book
      await webviewText(
        '.review .empty, .review .verdict',
        /Begin one with "git init"|No picture of the book changed/,
      );
    } finally {
      await fs.rename(aside, at);
    }
  });

  inEachTheme('are readable', async theme => {
    await onBranch();
    assert.deepEqual(await webviewAxe('.review'), []);
    await screenshot(`review-list-${theme}`);
    await webviewClick('[data-path="pictures/plate-1.jpg"]');
    await bothDrawn();
    await sleep(300);
    assert.deepEqual(await webviewAxe('.review'), []);
    await screenshot(`review-${theme}`, { height: 2200 });
  });
});
