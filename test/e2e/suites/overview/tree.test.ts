import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import fs from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import * as vscode from 'vscode';
import {
  bookRead,
  closeAll,
  extension,
  inEachTheme,
  inWorkspace,
  problems,
  rulesOn,
  sleep,
  until,
  workspace,
} from '../../editor';
import { answer } from '../../quick-input';
import {
  press,
  screenshot,
  webviewText,
  workbenchClick,
  workbenchEval,
  workbenchHover,
  workbenchMenu,
  workbenchText,
} from '../../window';

const PANE = '.pane:has(> .pane-header[aria-label^="Pictures of the Book"])';
const ROW = `${PANE} .monaco-list-row`;
const WAIVERS = inWorkspace('.evengrey-waivers.json').fsPath;

/** The rows as a person reads them. */
const rows = () =>
  workbenchEval<string[]>(
    PANE,
    `[...element.querySelectorAll('.monaco-list-row')]
      .sort((x, y) => x.getBoundingClientRect().top - y.getBoundingClientRect().top)
      .map(row => ['.label-name', '.label-description'].map(part => row.querySelector(part)?.innerText ?? '').join(' '))`,
  );
const rowsAre = (what: string, isSo: (rows: string[]) => boolean) => until(what, rows, isSo);
const header = () => workbenchEval<string>(`${PANE} > .pane-header`, 'element.innerText');
const paneText = (words: RegExp) =>
  until(
    String(words),
    () => workbenchEval<string>(PANE, 'element.innerText'),
    text => words.test(text),
  );
/** A button beside the tree's name: it is there while the pointer is. */
async function button(label: string) {
  await workbenchHover(`${PANE} > .pane-header`);
  await workbenchClick(`${PANE} > .pane-header [aria-label^="${label}"]`);
}
/** Chooses from the menu of a row. */
async function menu(row: string, action: string) {
  await workbenchMenu(ROW, row);
  await workbenchText('.monaco-menu', new RegExp(action));
  // in its first tenth of a second a menu takes no click
  await sleep(200);
  await workbenchClick('.monaco-menu .action-item', action);
}
const collapsed = async () => {
  await vscode.commands.executeCommand('workbench.actions.treeView.evengrey.book.collapseAll');
  await rowsAre('groups alone', seen => seen.every(row => !row.includes('plate-')));
};

describe('the tree in the explorer', () => {
  before(async () => {
    await bookRead();
    await vscode.commands.executeCommand('evengrey.book.focus');
    await vscode.commands.executeCommand('evengrey.tree.byFinding');
  });
  afterEach(closeAll);

  it('has the findings with their counts, the pictures below', async () => {
    await rowsAre('the groups', seen => seen.length >= 3);
    assert.match(await header(), /7 pictures, 2 to put right/i);
    assert.ok((await rows()).includes('mixed-encodings 1 picture'), String(await rows()));
    await workbenchClick(ROW, 'mixed-encodings');
    await rowsAre('the picture', seen => seen.some(row => /^plate-7\.tif four-channel · pictures/.test(row)));
  });

  it('opens a picture’s page by a click', async () => {
    await workbenchClick(ROW, 'plate-7.tif');
    await webviewText('.head h1', /plate-7\.tif/);
    await collapsed();
  });

  it('is grouped by encoding when that is asked for', async () => {
    await vscode.commands.executeCommand('evengrey.book.focus');
    await button('Group Pictures by Encoding');
    await rowsAre('encodings', seen => /^rgb-neutral .*5 pictures$/.test(seen[0]));
    assert.equal((await rows()).length, 3);
  });

  it('shows only what has the words that are typed, and says so', async () => {
    await button('Show Only Some Pictures');
    await answer(/Show Only Pictures With/, 'plate-7');
    await rowsAre('one encoding', seen => seen.length === 1 && /^four-channel .*1 picture$/.test(seen[0]));
    await press('Enter');
    await paneText(/Shown are pictures with "plate-7"/);
    await button('Show All Pictures');
    await rowsAre('all encodings', seen => seen.length === 3);
  });

  it('says what to do where no picture has the words', async () => {
    await vscode.commands.executeCommand('evengrey.tree.filter');
    await answer(/Show Only Pictures With/, 'nothing like it');
    await press('Enter');
    await paneText(/No picture has these words/);
    assert.match(await header(), /none with "nothing like it"/i);
    await workbenchClick(`${PANE} .welcome-view-content .monaco-button`);
    await rowsAre('all encodings', seen => seen.length === 3);
  });

  it('shows a picture that is searched by its name, grouped by finding, where nothing was found on it', async () => {
    await vscode.commands.executeCommand('evengrey.tree.byFinding');
    await vscode.commands.executeCommand('evengrey.tree.filter');
    await answer(/Show Only Pictures With/, 'plate-2');
    await press('Enter');
    await rowsAre('nothing found', seen => seen.length === 1 && /^nothing found 1 picture$/.test(seen[0]));
    await workbenchClick(ROW, 'nothing found');
    await rowsAre('the picture', seen => seen.some(row => /^plate-2\.\w+ rgb-neutral · pictures/.test(row)));
    await screenshot('tree-nothing-found');
    await vscode.commands.executeCommand('evengrey.tree.showAll');
    await vscode.commands.executeCommand('evengrey.tree.byEncoding');
    await rowsAre('all encodings', seen => seen.length === 3);
  });

  it('converts a group by its menu', async () => {
    await menu('rgb-neutral', 'Convert...');
    await workbenchText('.quick-input-title', /Convert 5 pictures \(/);
    await press('Escape');
    await button('Group Pictures by Finding');
    await rowsAre('findings', seen => seen.some(row => row.startsWith('residual-chroma')));
  });

  it('leads to the whole book', async () => {
    await button('Show the Whole Book');
    await webviewText('.verdict', /2 of 7/);
  });

  inEachTheme('is readable', async theme => {
    await vscode.commands.executeCommand('evengrey.showBook');
    await webviewText('.verdict', /2 of 7/);
    await workbenchClick(ROW, 'mixed-encodings');
    await screenshot(`tree-${theme}`);
    await collapsed();
  });

  it('waives one finding with a reason, which stands in the file of the team', async () => {
    await workbenchClick(ROW, 'residual-chroma');
    await rowsAre('the picture', seen => seen.some(row => /^plate-6\.png/.test(row)));
    await menu('plate-6.png', 'Waive This Finding...');
    try {
      await answer(/Waive residual-chroma on plate-6\.png/, 'It is a stamp.');
      await press('Enter');
      await until(
        'no problem',
        () => rulesOn('pictures/plate-6.png'),
        found => !found.includes('residual-chroma'),
      );
      const { waivers } = JSON.parse(await fs.readFile(WAIVERS, 'utf8'));
      assert.deepEqual(
        waivers.map(({ rule, picture, reason }: Record<string, string>) => [rule, picture, reason]),
        [['residual-chroma', 'pictures/plate-6.png', 'It is a stamp.']],
      );
      await rowsAre('one group less', seen => !seen.some(row => row.startsWith('residual-chroma')));
    } finally {
      await fs.rm(WAIVERS, { force: true });
    }
    await rowsAre('it again', seen => seen.some(row => row.startsWith('residual-chroma')));
    await collapsed();
  });

  it('leaves out what the team has waived, as the Problems panel does, and says once how many', async () => {
    const cli = path.join(extension().extensionPath, 'dist/cli.js');
    await promisify(execFile)(process.execPath, [cli, 'check', workspace().fsPath, '--waive'], {
      env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' },
    }).catch(() => {});
    try {
      await rowsAre('no warning', seen => !seen.some(row => /mixed-encodings|residual-chroma/.test(row)));
      await until(
        'no problem',
        () => rulesOn('pictures/plate-7.tif'),
        found => found.length === 0,
      );
      const told = problems().filter(({ file }) => file === '.evengrey-waivers.json');
      assert.match(told[0].diagnostic.message, /^3 findings are waived by \.evengrey-waivers\.json/);
      assert.equal(told.filter(({ diagnostic }) => /are waived/.test(diagnostic.message)).length, 1);
      await vscode.commands.executeCommand('evengrey.showBook');
      await webviewText('.verdict', /Only 3 waived findings stand against printing/);
      await fs.writeFile(WAIVERS, '{ "waivers": [ { "rule": 1 } ] }');
      await rowsAre('the warnings again', seen => seen.some(row => row.startsWith('mixed-encodings')));
      const broken = problems().filter(({ file }) => file === '.evengrey-waivers.json');
      assert.equal(broken[0].diagnostic.severity, vscode.DiagnosticSeverity.Error);
    } finally {
      await fs.rm(WAIVERS, { force: true });
    }
    await until(
      'the warnings again',
      () => rulesOn('pictures/plate-7.tif'),
      rules => rules.includes('mixed-encodings'),
    );
  });

  it('counts each of several books by itself, as the status bar does the one in front', async () => {
    const inner = inWorkspace('inner').fsPath;
    await fs.mkdir(inner);
    await fs.copyFile(inWorkspace('pictures/plate-1.jpg').fsPath, path.join(inner, 'one.jpg'));
    await fs.writeFile(path.join(inner, 'evengrey.json'), '{ "process": "inkjet" }');
    const status = (words: RegExp) => workbenchText('.statusbar', words);
    try {
      await rowsAre('a row a book', seen => seen.some(row => /^inner 1 picture/.test(row)));
      await rowsAre('the other by its name', seen => seen.some(row => /^overview 8 pictures/.test(row)));
      assert.doesNotMatch(await header(), /\d/, 'no picture is counted twice');
      await vscode.commands.executeCommand('vscode.open', inWorkspace('inner/one.jpg'));
      await status(/inner: (?!.* of 8)/);
      await vscode.commands.executeCommand('evengrey.showBook');
      await webviewText('.verdict', /the one picture/);
      await vscode.commands.executeCommand('vscode.open', inWorkspace('pictures/plate-1.jpg'));
      await status(/overview: \d of 8 pictures to put right/);
      await vscode.commands.executeCommand('workbench.action.openPreviousRecentlyUsedEditor');
      await status(/inner: /);
      await screenshot('status-several-books');
    } finally {
      await fs.rm(inner, { recursive: true });
    }
    await rowsAre('one book', seen => !seen.some(row => row.startsWith('inner')));
    assert.match(await header(), /7 pictures/i);
  });
});
