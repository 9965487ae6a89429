import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import path from 'node:path';
import * as vscode from 'vscode';
import { tiff } from '../../../cli/support/tiff';
import { bookRead, closeAll, inWorkspace, rulesOn, sleep, spare, until } from '../../editor';
import {
  messageText,
  press,
  screenshot,
  toastPress,
  type,
  workbenchClick,
  workbenchEval,
  workbenchMenu,
  workbenchText,
} from '../../window';

const ROW = '.quick-input-list .monaco-list-row';
const TOAST = '.notification-toast';
const at = (file: string) => inWorkspace(file).fsPath;
const exists = (file: string) =>
  fs.stat(at(file)).then(
    () => true,
    () => false,
  );
const hashOf = async (file: string) =>
  createHash('sha256')
    .update(await fs.readFile(at(file)))
    .digest('hex');
const written = (file: string) =>
  until(
    file,
    () => exists(file),
    is => is,
  );

/** Answers the three questions: the encoding, how, and where. */
async function answer(encoding: string, method: string, place: string) {
  for (const option of [encoding, method, place]) {
    await workbenchText(ROW, new RegExp(option));
    // a person is not quicker than the list takes to settle
    await sleep(300);
    await workbenchClick(ROW, option);
  }
}

describe('converting', () => {
  before(bookRead);
  afterEach(closeAll);

  it('is offered in the bar of our picture editor, asks step by step, and writes beside the picture', async () => {
    await vscode.commands.executeCommand('vscode.open', inWorkspace('pictures/plate-7.tif'));
    await workbenchClick('.editor-actions a[aria-label^="Convert..."]');
    await workbenchText('.quick-input-title', /Convert plate-7\.tif/);
    const first = await workbenchText(`${ROW}.focused`, /Recommended: most of this part/);
    assert.match(first, /^Equal red, green and blue\s*rgb-neutral, recommended/);
    const [above, below] = await workbenchEval<[number, number]>(
      `${ROW}.focused`,
      `(() => {
        const list = element.closest('.monaco-list').getBoundingClientRect();
        const label = element.querySelector('.label-name').getBoundingClientRect();
        return [label.top - list.top, list.bottom - label.bottom];
      })()`,
    );
    assert.ok(above >= 0 && below >= 0, 'its name is in sight');
    await screenshot('convert-quick-pick');
    await answer('One grey channel', 'Lightness', 'Beside the picture');
    const toast = await messageText(/is written/);
    assert.match(toast, /plate-7\.single-channel\.tif/);
    assert.match(toast, /Read again: single-channel, its lightness off by L\* 0\.\d+ at most/);
    assert.equal(await exists('pictures/plate-7.single-channel.tif'), true);
    await toastPress('Show the report');
    const document = await until(
      'the report',
      () => vscode.window.activeTextEditor?.document,
      shown => /1 picture converted/.test(shown?.getText() ?? ''),
    );
    assert.equal(document!.isUntitled, false, 'nothing to be saved');
    await workbenchText('.tab.active', /Conversion report \d+\.txt/);
    // the report took no button away
    await messageText(/is written/);
    await screenshot('convert-report');
    await toastPress('Undo');
    await until(
      'the result taken away',
      () => exists('pictures/plate-7.single-channel.tif'),
      is => !is,
    );
  });

  it('goes back a step, and gives up at Escape without writing', async () => {
    const before = await fs.readdir(at('pictures'));
    const running = vscode.commands.executeCommand('evengrey.convert', inWorkspace('pictures/plate-7.tif'));
    await workbenchClick(ROW, 'Black ink alone');
    await workbenchText(ROW, /Darker sky/);
    await workbenchClick('.quick-input-titlebar .codicon-quick-input-back');
    await workbenchText(ROW, /Black ink alone/);
    await press('Escape');
    assert.equal(await running, undefined);
    assert.deepEqual(await fs.readdir(at('pictures')), before);
  });

  it('replaces pictures in place on request, and brings them back bit for bit', async () => {
    const file = 'pictures/plate-6.png';
    const original = await hashOf(file);
    void vscode.commands.executeCommand('evengrey.convert', inWorkspace(file));
    await answer('Equal red, green and blue', 'Lightness', 'In place');
    await messageText(/is written/);
    assert.notEqual(await hashOf(file), original);
    await until(
      'the finding to go',
      () => rulesOn(file),
      rules => !rules.includes('residual-chroma'),
    );
    await toastPress('Undo');
    await messageText(/is the original again, bit for bit/);
    assert.equal(await hashOf(file), original);
    await until(
      'the finding to come back',
      () => rulesOn(file),
      rules => rules.includes('residual-chroma'),
    );
  });

  it('has layouts place the result', async () => {
    const layout = await fs.readFile(at('book.md'), 'utf8');
    void vscode.commands.executeCommand('evengrey.convert', inWorkspace('pictures/plate-7.tif'));
    await answer('One grey channel', 'Lightness', 'the layouts place the result');
    await messageText(/layouts that place the result now: 1/);
    assert.match(
      await fs.readFile(at('book.md'), 'utf8'),
      /!\[Inks\]\(pictures\/plate-7\.tif\.single-channel\.png\)/,
    );
    await vscode.commands.executeCommand('notifications.clearAll');
    void vscode.commands.executeCommand('evengrey.convert', inWorkspace('pictures/plate-7.tif'));
    await answer('One grey channel', 'Lightness', 'the layouts place the result');
    await messageText(/1 skipped.*The layouts place what was converted already/);
    const result = 'pictures/plate-7.tif.single-channel.png';
    const told = () =>
      vscode.languages
        .getDiagnostics(inWorkspace(result))
        .filter(({ message }) => /an earlier state of pictures\/plate-7\.tif/.test(message));
    assert.deepEqual(told(), []);
    const original = await fs.readFile(at('pictures/plate-7.tif'));
    await fs.appendFile(at('pictures/plate-7.tif'), 'exported again');
    await until('the result to be outdated', told, ({ length }) => length === 1);
    await fs.writeFile(at('pictures/plate-7.tif'), original);
    await until('the result to be right again', told, ({ length }) => length === 0);
    await fs.writeFile(at('book.md'), layout);
    await fs.rm(at(result));
  });

  describe('for layouts that can place no TIFF', () => {
    const files = ['book.md', 'evengrey.json'];
    const garden = 'pictures/garden.jpg';
    const stored = new Map<string, string>();
    const textOf = (file: string) => fs.readFile(at(file), 'utf8');
    const convert = (to: string) => {
      void vscode.commands.executeCommand('evengrey.convert', inWorkspace(garden));
      return answer(to, 'Lightness', 'the layouts place the result');
    };

    before(async () => {
      for (const file of files) stored.set(file, await textOf(file));
      const settings = { ...JSON.parse(stored.get('evengrey.json')!), spreads: [[garden]] };
      await fs.writeFile(at('evengrey.json'), JSON.stringify(settings));
    });
    after(async () => {
      for (const [file, text] of stored) await fs.writeFile(at(file), text);
      for (const name of await fs.readdir(at('pictures')))
        if (name.startsWith('garden.jpg.')) await fs.rm(at(`pictures/${name}`));
    });

    it('leaves a line as it is that could place no result, and says so with the way out', async () => {
      await convert('Black ink alone');
      const toast = await messageText(/Lines left as they are: 1/);
      assert.match(toast, /garden\.jpg\.black-only\.tif is written/);
      assert.match(toast, /book\.md:7: "pictures\/garden\.jpg" stays on the page: browsers show no TIFF/);
      await screenshot('convert-line-left');
      assert.equal(await textOf('book.md'), stored.get('book.md'));
      await vscode.commands.executeCommand('notifications.clearAll');
    });

    it('makes a PNG, and has the settings name it too, as one step', async () => {
      await convert('Equal red, green and blue');
      const toast = await messageText(/place the result now: 1/);
      assert.match(toast, /garden\.jpg\.rgb-neutral\.png is written/);
      assert.match(toast, /Names in evengrey\.json that go with them: 1/);
      assert.match(await textOf('book.md'), /!\[Garden\]\(pictures\/garden\.jpg\.rgb-neutral\.png\)/);
      assert.match(
        await textOf('evengrey.json'),
        /"spreads":\[\["pictures\/garden\.jpg\.rgb-neutral\.png"\]\]/,
      );
    });
  });

  it('takes what is selected in the explorer, from its menu', async () => {
    const selected = '.explorer-folders-view .monaco-list-row.selected';
    // the explorer may draw itself anew under the key, as files of the test before go: then it is pressed again
    await until(
      'two pictures selected',
      async () => {
        await vscode.commands.executeCommand('revealInExplorer', inWorkspace('pictures/plate-6.png'));
        await workbenchText(selected, /plate-6\.png/);
        await vscode.commands.executeCommand('workbench.files.action.focusFilesExplorer');
        await press('Shift+ArrowDown');
        await sleep(500);
        return workbenchEval<string>(
          'body',
          `[...element.querySelectorAll("${selected}")].map(row => row.innerText.trim()).join()`,
        );
      },
      rows => rows === 'plate-6.png,plate-7.tif',
    );
    await workbenchMenu('.explorer-folders-view .monaco-list-row', 'plate-7.tif');
    await workbenchText('.monaco-menu', /Convert\.\.\./);
    await screenshot('convert-explorer-menu');
    await workbenchClick('.monaco-menu .action-item', 'Convert...');
    await workbenchText('.quick-input-title', /Convert 2 pictures \(/);
    await answer('One grey channel', 'Lightness', 'Beside the picture');
    await messageText(/2 converted/);
    for (const file of ['pictures/plate-6.single-channel.png', 'pictures/plate-7.single-channel.tif']) {
      await written(file);
      await fs.rm(at(file));
    }
  });

  it('tells of what cannot be converted by its name, and why', async () => {
    await fs.writeFile(at('pictures/broken.tif'), 'II*\0 no picture at all');
    try {
      void vscode.commands.executeCommand('evengrey.convert', inWorkspace('pictures/broken.tif'));
      await answer('Equal red, green and blue', 'Lightness', 'Beside the picture');
      assert.match(await messageText(/failed/), /1 failed\. pictures\/broken\.tif: \w/);
    } finally {
      await fs.rm(at('pictures/broken.tif'));
    }
  });

  it('says so where a strong tone goes, which may be meant', async () => {
    const sepia = tiff(96, 64, x => [40 + 2 * x, 25 + 2 * x, 2 * x]);
    await fs.writeFile(at('pictures/sepia.tif'), sepia);
    try {
      void vscode.commands.executeCommand('evengrey.convert', inWorkspace('pictures/sepia.tif'));
      await answer('Equal red, green and blue', 'Lightness', 'Beside the picture');
      const toast = await messageText(/sepia\.rgb-neutral\.tif is written/);
      assert.match(toast, /A strong tone is gone, which may be meant: sepia\.tif\. See the report/);
    } finally {
      for (const name of await fs.readdir(at('pictures')))
        if (name.startsWith('sepia.')) await fs.rm(at(`pictures/${name}`));
    }
  });

  it('makes nothing of many grey of which nobody said so, until it is told to', async () => {
    const pictures = ['pictures/plate-7.tif', 'pictures/garden.jpg'].map(inWorkspace);
    const made = async () =>
      (await fs.readdir(at('pictures'))).filter(name => name.includes('.single-channel.')).sort();
    const convert = () => void vscode.commands.executeCommand('evengrey.convert', pictures[0], pictures);
    const remove = async () => {
      for (const name of await made()) await fs.rm(at(`pictures/${name}`));
    };
    try {
      convert();
      await workbenchText('.quick-input-title', /Convert 2 pictures \(1\/4\)/);
      await workbenchClick(ROW, 'One grey channel');
      const question = await workbenchText(ROW, /Leave them as they are/);
      assert.match(question, /Leave them as they are\s*In colour: garden\.jpg/);
      await screenshot('convert-unmeant');
      await answer('Leave them as they are', 'Lightness', 'Beside the picture');
      assert.match(
        await messageText(/1 converted, 1 skipped/),
        /Left as they are, since nobody said that they are to be grey\. In colour: garden\.jpg\./,
      );
      assert.deepEqual(await made(), ['plate-7.single-channel.tif']);
      await closeAll();
      await remove();
      convert();
      await workbenchClick(ROW, 'One grey channel');
      await answer('Make them grey too', 'Lightness', 'Beside the picture');
      await messageText(/2 converted/);
      assert.equal((await made()).length, 2);
    } finally {
      await remove();
    }
  });

  it('leaves out of a folder what no layout places, and says so', async () => {
    await fs.mkdir(at('unplaced'));
    try {
      await fs.copyFile(path.join(spare(), 'large.jpg'), at('unplaced/large.jpg'));
      void vscode.commands.executeCommand('evengrey.convert', inWorkspace('unplaced'));
      await answer('One grey channel', 'Lightness', 'Beside the picture');
      const toast = await messageText(/no picture to convert/);
      assert.match(toast, /1 picture was left out, since no layout places it: unplaced\/large\.jpg\. Name/);
    } finally {
      await fs.rm(at('unplaced'), { recursive: true });
    }
  });

  it('shows its progress and can be stopped: every picture is whole', async () => {
    const bytes = await fs.readFile(path.join(spare(), 'large.jpg'));
    const large = Array.from({ length: 8 }, (_, i) => `large/${i}.jpg`);
    await fs.mkdir(at('large'));
    try {
      for (const [i, file] of large.entries())
        await fs.writeFile(at(file), Buffer.concat([bytes, Buffer.from(`stop${i}`)]));
      const before = await Promise.all(large.map(hashOf));
      const pictures = large.map(inWorkspace);
      void vscode.commands.executeCommand('evengrey.convert', pictures[0], pictures);
      await answer('One grey channel', 'Lightness', 'In place');
      const told = await messageText(/Converting.* of 8 pictures/);
      assert.doesNotMatch(told, /Converting \d/, 'one total is enough');
      await workbenchClick(`${TOAST} .monaco-button`, 'Cancel');
      await messageText(/Stopped\. Every picture is whole/);
      void vscode.commands.executeCommand('evengrey.undoConversion', inWorkspace('large'));
      await until(
        'the originals',
        () => Promise.all(large.map(hashOf)),
        hashes => hashes.every((hash, i) => hash === before[i]),
        40_000,
      );
      const left = await until(
        'an end',
        () => fs.readdir(at('large')),
        names => names.length === large.length,
        40_000,
      );
      assert.deepEqual(left.sort(), large.map(file => path.basename(file)).sort());
    } finally {
      await fs.rm(at('large'), { recursive: true, force: true });
    }
  });

  it('is in the palette, and asks for a picture where none is meant', async () => {
    await vscode.commands.executeCommand('workbench.action.quickOpen', '>Evengrey: ');
    await workbenchText('.quick-input-list', /Undo Conversion/);
    await press('Escape');
    await vscode.commands.executeCommand('workbench.action.quickOpen', '>');
    await type('Evengrey: Convert');
    await workbenchText('.quick-input-list', /Convert\.\.\./);
    await press('Enter');
    await messageText(/Open a picture first/);
  });
});
