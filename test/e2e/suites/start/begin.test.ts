import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import path from 'node:path';
import * as vscode from 'vscode';
import { closeAll, extension, inWorkspace, problems, sleep, until } from '../../editor';
import { answer } from '../../quick-input';
import {
  messageText,
  press,
  screenshot,
  toastPress,
  workbenchClick,
  workbenchEval,
  workbenchText,
} from '../../window';

const ROW = '.quick-input-list .monaco-list-row';
const WALKTHROUGH = '.gettingStartedContainer';
const settings = () => inWorkspace('evengrey.json').fsPath;
const run = (command: string, ...named: unknown[]) => void vscode.commands.executeCommand(command, ...named);

async function choose(option: string) {
  await workbenchText(ROW, new RegExp(option));
  // a person is not quicker than the list takes to settle
  await sleep(300);
  await workbenchClick(ROW, option);
}

async function sayWho(name: string) {
  await answer(/Who prints it\?/, name);
  await press('Enter');
}

/** What the walkthrough shows as done, in its words. */
const stepsDone = () =>
  workbenchEval<string>(
    WALKTHROUGH,
    `[...element.querySelectorAll('[role=checkbox][aria-checked=true]')].map(box => box.getAttribute('aria-label')).join()`,
  );

describe('a folder of pictures that is no book yet', () => {
  before(() => extension().activate());
  afterEach(closeAll);

  it('is told, by a command that wants a book, how it becomes one', async () => {
    run('evengrey.check');
    const toast = await messageText(/no book here yet/);
    assert.match(toast, /a file evengrey\.json that says how it is printed/);
    await screenshot('start-no-book');
    await toastPress('Write First Settings...');
    await workbenchText('.quick-input-message', /Who prints it\?/);
    await press('Escape');
    assert.deepEqual(problems(), []);
  });

  it('goes back a step with what was said, and writes nothing at Escape', async () => {
    run('evengrey.writeSettings');
    await sayWho('Example House');
    await choose('Silver halide');
    await workbenchText(ROW, /Lustre photographic paper/);
    await workbenchClick('.quick-input-titlebar .codicon-quick-input-back');
    await workbenchText(ROW, /I do not know yet/);
    await workbenchClick('.quick-input-titlebar .codicon-quick-input-back');
    await workbenchText('.quick-input-message', /Who prints it\?/);
    await press('Enter');
    await workbenchText(ROW, /I do not know yet/);
    await press('Escape');
    await assert.rejects(fs.stat(settings()));
  });

  it('is told where its files must lie, if they are on no disk', async () => {
    run('evengrey.writeSettings', vscode.Uri.from({ scheme: 'not-a-disk', path: '/book' }));
    await messageText(/A book is checked where its files lie on a disk/);
  });

  it('asks for which folder where a book lies in it, and leaves that book its pictures', async () => {
    const picture = inWorkspace('pictures/plate-1.jpg').fsPath;
    const titled = (folder: string) =>
      workbenchText('.quick-input-title', new RegExp(`First settings of ${folder}`));
    for (const folder of ['first', 'second']) {
      await fs.mkdir(inWorkspace(folder).fsPath);
      await fs.copyFile(picture, inWorkspace(`${folder}/one.jpg`).fsPath);
    }
    await fs.writeFile(inWorkspace('first/evengrey.json').fsPath, '{}');
    try {
      for (const named of [[], [inWorkspace('.')]]) {
        run('evengrey.writeSettings', ...named);
        await workbenchText('.quick-input-list', /pictures\s*\d+ pictures\s*second\s*1 picture$/);
        await screenshot('start-which-folder');
        await choose('second');
        await titled('second');
        await press('Escape');
      }
      run('evengrey.writeSettings', inWorkspace('pictures'));
      await titled('pictures');
      await press('Escape');
      await vscode.commands.executeCommand('vscode.open', inWorkspace('second/one.jpg'));
      run('evengrey.writeSettings');
      await titled('second');
      await press('Escape');
      await assert.rejects(fs.stat(settings()));
    } finally {
      for (const folder of ['first', 'second']) await fs.rm(inWorkspace(folder).fsPath, { recursive: true });
    }
    await until('no book any more', problems, list => list.length === 0);
  });

  it('becomes one by four answers, with what was found in it', async () => {
    run('evengrey.writeSettings');
    await sayWho('Example House');
    await workbenchText(ROW, /Photographic paper, exposed and developed/);
    await sleep(300);
    await screenshot('start-process');
    await workbenchClick(ROW, 'Offset, coated paper');
    await choose('Gloss coated paper');
    await workbenchText(ROW, /A warm white lamp at home/);
    await screenshot('start-light');
    await choose('LED, about 2700 K');
    const editor = await until(
      'the settings open',
      () => vscode.window.activeTextEditor,
      shown => shown?.document.fileName === settings(),
    );
    const text = editor!.document.getText();
    assert.match(text, /Printed by Example House/);
    assert.match(text, /"process": "offset-coated"/);
    assert.match(text, /"light": "LED-B1"/);
    assert.match(text, /"layouts": \["book\.md"\]/);
    assert.match(text, /place: 3 of the \d in this folder/);
    // the book that it is from now on is checked, and its settings are in order
    await until('findings', problems, list => list.length > 0);
    assert.deepEqual(
      problems().filter(({ file, diagnostic }) => file === 'evengrey.json' && diagnostic.severity === 0),
      [],
    );
    await screenshot('start-settings');
  });

  it('keeps settings that are there, opens them, and says so', async () => {
    const before = await fs.readFile(settings(), 'utf8');
    run('evengrey.writeSettings');
    await messageText(/This book has settings already: evengrey\.json stays as it is/);
    assert.equal(vscode.window.activeTextEditor?.document.fileName, settings());
    assert.equal(await fs.readFile(settings(), 'utf8'), before);
  });

  it('opens a picture of the book for whoever has chosen none', async () => {
    await vscode.commands.executeCommand('evengrey.openSomePicture');
    await until(
      'a page',
      () => vscode.window.tabGroups.activeTabGroup.activeTab?.input,
      input => input instanceof vscode.TabInputCustom && input.viewType.startsWith('evengrey.'),
    );
  });

  it('takes the demo book from the walkthrough into a folder of its own, once', async () => {
    const folder = inWorkspace('evengrey-demo');
    const makeHere = async () => {
      await workbenchText('.quick-input-title', /Where to make the demo book/);
      await workbenchClick('.quick-input-widget .monaco-button', 'Make It Here');
    };
    await vscode.commands.executeCommand('workbench.action.openWalkthrough', 'evengrey.evengrey#begin');
    await workbenchClick(`${WALKTHROUGH} .monaco-button`, 'Make the Demo Book');
    await makeHere();
    await until('the first step done', stepsDone, done => done.includes('Make the demo book'), 90_000);
    await messageText(/The demo book is in evengrey-demo/);
    const pictures = await fs.readdir(path.join(folder.fsPath, 'pictures'));
    assert.ok(pictures.length >= 8, pictures.join());
    await until(
      'its findings',
      () => problems().filter(({ file }) => file.startsWith('evengrey-demo/faults/')),
      list => list.length > 0,
      60_000,
    );
    await vscode.commands.executeCommand('notifications.clearAll');
    run('evengrey.makeDemo');
    await makeHere();
    await messageText(/is not empty, and the demo overwrites nothing/);
    await vscode.workspace.fs.delete(folder, { recursive: true });
  }).timeout(180_000);

  it('is led by the walkthrough, step by step', async () => {
    const themes = ['Default Light Modern', 'Default Dark Modern', 'Default High Contrast'];
    await vscode.commands.executeCommand('workbench.action.openWalkthrough', 'evengrey.evengrey#begin');
    const steps = await workbenchText(
      '.getting-started-detail-left, .gettingStartedDetailsContent',
      /Begin with your own book/,
    );
    assert.match(
      steps,
      /Make the demo book[\s\S]*See what is found[\s\S]*Open a picture's page[\s\S]*Convert one/,
    );
    const configuration = vscode.workspace.getConfiguration('workbench');
    for (const theme of themes) {
      await configuration.update('colorTheme', theme, vscode.ConfigurationTarget.Global);
      await sleep(700);
      await screenshot(`start-walkthrough-${theme.split(' ').slice(1).join('-').toLowerCase()}`);
    }
    await configuration.update('colorTheme', undefined, vscode.ConfigurationTarget.Global);
  });
});
