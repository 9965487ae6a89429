import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import path from 'node:path';
import * as vscode from 'vscode';
import { tiff } from '../../../cli/support/tiff';
import { bookRead, closeAll, inEachTheme, inWorkspace, sleep, until } from '../../editor';
import {
  press,
  screenshot,
  type,
  webviewAxe,
  webviewClick,
  webviewCount,
  webviewEval,
  webviewText,
  workbenchClick,
  workbenchEval,
  workbenchText,
} from '../../window';

const PAGE = inWorkspace('page.html').fsPath;

const open = async () => {
  await vscode.commands.executeCommand('evengrey.showBook');
  await webviewText('.book .verdict');
  await allDrawn();
};
const allDrawn = () =>
  until(
    'the small pictures',
    () => webviewCount('.contact .frame img'),
    n => n === 7,
  );
/** Whether each picture is chosen, in the order of the page. */
const chosen = async () => {
  const names = await webviewEval<string[]>(
    '#contacts',
    '[...element.querySelectorAll(\'[aria-selected="true"] .name\')].map(name => name.textContent)',
  );
  return names.map(name => path.posix.basename(name));
};
const shown = () =>
  webviewEval<string[]>(
    '#contacts',
    "[...element.querySelectorAll('.contact:not([hidden]) .name')].map(name => name.textContent.replace('pictures/', ''))",
  );
const contact = (name: string) => `.contact[data-path="pictures/${name}"]`;
const keyboardAt = () =>
  webviewEval<string>(
    '#contacts',
    'element.ownerDocument.activeElement.querySelector(".name")?.textContent ?? ""',
  );

describe('the whole book on one screen', () => {
  before(bookRead);
  beforeEach(open);
  afterEach(closeAll);

  it('says first what to do, in numbers', async () => {
    assert.match(await webviewText('.verdict'), /2 of 7 pictures want attention/);
    assert.match(
      await webviewText('header.book .terms'),
      /^inside: Offset, coated paper; .+\ncover: \w.+/,
      'what it is drawn for',
    );
    assert.match(await webviewText('.doings'), /4 send\s*2 fix\s*1 ask the house/);
    assert.match(await webviewText('.facets'), /Encoding\s*rgb-neutral .* 5/);
    assert.match(await webviewText('.facets'), /Part\s*in no part 6\s*cover 1/);
    assert.match(await webviewText('.facets'), /Printed as\s*inside .* 6\s*cover .* 1/);
  });

  it('has the pictures in the order of the book, those of a spread in one frame', async () => {
    assert.deepEqual(await shown(), [
      'plate-1.jpg',
      'plate-2.jpg',
      'plate-7.tif',
      'plate-3.jpg',
      'plate-4.jpg',
      'plate-5.jpg',
      'plate-6.png',
    ]);
    assert.equal(
      await webviewEval('.opening', 'element.getAttribute("aria-label")'),
      'Facing: pictures/plate-2.jpg, pictures/plate-7.tif',
    );
    assert.match(await webviewText(contact('plate-7.tif')), /convert/);
    assert.match(await webviewText(contact('plate-7.tif')), /unlike its facing page|stored unlike others/);
    assert.doesNotMatch(await webviewText(contact('plate-1.jpg')), /unlike/);
  });

  it('draws all of them as one possible order, says so, and shows the files when asked', async () => {
    const filter = () =>
      webviewEval<string>(`${contact('plate-7.tif')} img`, 'getComputedStyle(element).filter');
    assert.match(await webviewText('#as-drawn'), /not the colours that they will have/);
    const first = await filter();
    assert.match(first, /url\(.*#filter-6-0/);
    await webviewClick('label[for="drawn-1"]');
    assert.match(await filter(), /url\(.*#filter-6-1/);
    await webviewClick('label[for="drawn-files"]');
    assert.equal(await filter(), 'none');
    assert.match(await webviewText('#as-drawn'), /as a screen shows them/);
    await webviewClick('label[for="drawn-0"]');
  });

  it('shows only what is asked for, by what to do, finding and encoding together', async () => {
    await webviewClick('[data-facet="doing"][data-value="fix"]');
    assert.deepEqual(await shown(), ['plate-7.tif', 'plate-6.png']);
    await webviewClick('[data-facet="encoding"][data-value="four-channel"]');
    assert.deepEqual(await shown(), ['plate-7.tif']);
    assert.match(await webviewText('#count'), /^1 of 7 pictures shown\.$/);
    await webviewClick('#all');
    await webviewClick('[data-facet="rule"][data-value="residual-chroma"]');
    assert.deepEqual(await shown(), ['plate-6.png']);
    await webviewClick('[data-facet="rule"][data-value="residual-chroma"]');
    assert.equal((await shown()).length, 7);
  });

  it('lets pictures be chosen by pointer as file managers do', async () => {
    await webviewClick(contact('plate-2.jpg'));
    await webviewClick(contact('plate-3.jpg'), { modifiers: ['Shift'] });
    assert.deepEqual(await chosen(), ['plate-2.jpg', 'plate-7.tif', 'plate-3.jpg']);
    await webviewClick(contact('plate-7.tif'), { modifiers: ['Control'] });
    assert.deepEqual(await chosen(), ['plate-2.jpg', 'plate-3.jpg']);
    assert.match(await webviewText('#count'), /2 chosen/);
    await webviewClick(contact('plate-1.jpg'));
    assert.deepEqual(await chosen(), ['plate-1.jpg']);
  });

  it('is gone through by keys, one place in the tab order', async () => {
    await webviewClick(contact('plate-1.jpg'));
    await press('ArrowRight');
    assert.equal(await keyboardAt(), 'pictures/plate-2.jpg');
    await press('Shift+ArrowRight');
    assert.deepEqual(await chosen(), ['plate-2.jpg', 'plate-7.tif']);
    await press('End');
    assert.equal(await keyboardAt(), 'pictures/plate-6.png');
    await press('Space');
    assert.deepEqual(await chosen(), ['plate-2.jpg', 'plate-7.tif', 'plate-6.png']);
    await press('ArrowUp');
    assert.notEqual(await keyboardAt(), 'pictures/plate-6.png');
    await press('Control+a');
    assert.equal((await chosen()).length, 7);
    await press('Escape');
    assert.deepEqual(await chosen(), []);
    assert.equal(await webviewCount('.contact[tabindex="0"]'), 1);
  });

  it('opens a picture by Enter and by two clicks', async () => {
    await webviewClick(contact('plate-6.png'));
    await press('Enter');
    await webviewText('.head h1', /plate-6\.png/);
    await vscode.commands.executeCommand('evengrey.showBook');
    await webviewClick(contact('plate-7.tif'), { clickCount: 2 });
    await webviewText('.head h1', /plate-7\.tif/);
  });

  it('asks how the chosen are to be converted, by the command that does it', async () => {
    await webviewClick('[data-facet="doing"][data-value="fix"]');
    assert.equal(await webviewEval('#convert', 'element.disabled'), true);
    await webviewClick('#choose');
    await webviewClick('#convert');
    await workbenchText('.quick-input-title', /Convert 2 pictures \(/);
    await press('Escape');
    await webviewClick('#all');
  });

  it('chooses what only needs another file placed too, and calls it so', async () => {
    const picture = inWorkspace('pictures/neutral.tif').fsPath;
    const layout = inWorkspace('plates.html').fsPath;
    await fs.writeFile(
      picture,
      tiff(96, 64, x => [40 + 2 * x]),
    );
    await fs.writeFile(layout, '<img alt="" src="pictures/neutral.tif">');
    try {
      await webviewText(contact('neutral.tif'), /place a PNG of it/);
      await webviewClick('#choose-convert');
      assert.deepEqual(await chosen(), ['neutral.tif']);
      await screenshot('overview-place');
    } finally {
      await fs.rm(layout);
      await fs.rm(picture);
    }
  });

  it('chooses what is to be converted in one press, and leaves out before it asks what cannot be', async () => {
    const layout = inWorkspace('book.md').fsPath;
    const names = ['plate-1.jpg', 'plate-6.png', 'plate-7.tif', 'missing.jpg', 'broken.jpg'];
    await fs.writeFile(inWorkspace('pictures/broken.jpg').fsPath, 'no picture');
    await fs.writeFile(layout, names.map(name => `![](pictures/${name})\n`).join('\n'));
    try {
      await webviewText('#contacts', /broken\.jpg[\s\S]*missing\.jpg|missing\.jpg[\s\S]*broken\.jpg/);
      await webviewClick('#choose-convert');
      assert.deepEqual((await chosen()).sort(), ['plate-6.png', 'plate-7.tif']);
      await webviewClick('#choose');
      assert.ok((await chosen()).includes('missing.jpg'));
      await webviewClick('#convert');
      await workbenchText(
        '.quick-input-title',
        /Convert 3 pictures of the 5 chosen; no readable file: (broken|missing)\.jpg, (broken|missing)\.jpg \(/,
      );
      await screenshot('overview-left-out');
      await workbenchClick('.quick-input-list .monaco-list-row', 'One grey channel');
      await workbenchText('.quick-input-list .monaco-list-row', /Darker sky/);
      await press('Escape');
      await webviewClick(contact('missing.jpg'));
      await webviewClick('#convert');
      await workbenchText(
        '.notifications-toasts',
        /Nothing of this can be converted\. pictures\/missing\.jpg: There is no such file/,
      );
    } finally {
      await fs.rm(layout);
      await fs.rm(inWorkspace('pictures/broken.jpg').fsPath);
    }
    await webviewText('#count', /^7 pictures/);
    await press('Escape');
  });

  it('says once what holds for the whole book, with the way to each rule', async () => {
    await webviewClick('#whole summary');
    assert.match(await webviewText('#whole'), /7 pictures: \d+ errors?/);
    await webviewClick('#whole summary');
  });

  it('is a table too', async () => {
    await webviewClick('#table summary');
    assert.match(await webviewText('#table table'), /plate-7\.tif\s*four-channel\s*Convert it first/);
    await webviewClick('#table summary');
  });

  it('is as the book is after each check, with what was chosen', async () => {
    await webviewClick(contact('plate-4.jpg'));
    const before = await fs.readFile(inWorkspace('pictures/plate-3.jpg').fsPath);
    const stained = await fs.readFile(inWorkspace('../spare/stained.jpg').fsPath);
    await fs.writeFile(inWorkspace('pictures/plate-3.jpg').fsPath, stained);
    try {
      await webviewText(contact('plate-3.jpg'), /rgb-residual/);
      await allDrawn();
      assert.deepEqual(await chosen(), ['plate-4.jpg']);
      assert.match(await webviewText('.doings'), /3 fix/);
    } finally {
      await fs.writeFile(inWorkspace('pictures/plate-3.jpg').fsPath, before);
    }
    await webviewText('.doings', /2 fix/);
  });

  it('draws only what comes into sight', async () => {
    const many = inWorkspace('pictures/many').fsPath;
    const plate = inWorkspace('pictures/plate-1.jpg').fsPath;
    await fs.mkdir(many);
    await Promise.all(Array.from({ length: 90 }, (_, n) => fs.copyFile(plate, path.join(many, `${n}.jpg`))));
    try {
      await webviewText('#count', /97 pictures/);
      await webviewClick(contact('plate-1.jpg'));
      const drawn = () => webviewCount('.contact .frame img');
      await until('those in sight', drawn, n => n > 8);
      assert.ok((await drawn()) < 60, String(await drawn()));
      await press('End');
      await webviewText('#contacts > .contact:last-of-type');
      await until(
        'the last',
        () => webviewCount('#contacts > .contact:last-of-type img'),
        n => n === 1,
      );
      assert.ok((await drawn()) < 97, String(await drawn()));
    } finally {
      await fs.rm(many, { recursive: true });
    }
    await webviewText('#count', /^7 pictures/);
    await press('Escape');
  });

  it('keeps what was chosen and shown while it is hidden', async () => {
    await webviewClick('[data-facet="encoding"][data-value="rgb-neutral"]');
    await webviewClick(contact('plate-4.jpg'));
    await vscode.commands.executeCommand('vscode.open', inWorkspace('evengrey.json'), { preview: false });
    await vscode.commands.executeCommand('evengrey.showBook');
    await webviewText('#count', /5 of 7 pictures shown; 1 chosen/);
    assert.deepEqual(await chosen(), ['plate-4.jpg']);
    await webviewClick('#all');
  });

  it('is written as one page where it is said, and over nothing without asking', async () => {
    const write = async () => {
      await webviewClick('#export');
      await workbenchText('.quick-input-title', /Export the Book/);
      const value = () => workbenchEval<string>('.quick-input-box input', 'element.value');
      await until('the name that is offered', value, offered =>
        /\/overview\/overview-preview\.html$/.test(offered),
      );
      await press('Control+a');
      await type(PAGE);
      await until('the name that is typed', value, typed => typed === PAGE);
      await press('Enter');
    };
    await write();
    const toast = await workbenchText('.notification-toast', /is written into/);
    assert.ok(toast.includes(path.dirname(PAGE)), toast);
    assert.match(toast, /Open|Show in the Explorer/);
    await screenshot('overview-exported');
    const page = await fs.readFile(PAGE, 'utf8');
    assert.match(page, /2 of 7 pictures want attention/);
    assert.equal([...page.matchAll(/<li><a href="#picture-\d+">/g)].length, 7);
    await vscode.commands.executeCommand('notifications.clearAll');
    await fs.writeFile(PAGE, 'mine');
    await write();
    await workbenchText('.quick-input-message, .quick-input-widget', /already exists|overwrite/i);
    assert.equal(await fs.readFile(PAGE, 'utf8'), 'mine');
    await press('Enter');
    await workbenchText('.notifications-toasts', /"page\.html" is there already and is no page of Evengrey/);
    assert.equal(await fs.readFile(PAGE, 'utf8'), 'mine');
    await press('Escape');
    await press('Escape');
    await until(
      'the dialog to go',
      () =>
        workbenchEval<boolean>(
          '.monaco-workbench',
          'element.querySelector(".quick-input-widget").style.display === "none"',
        ),
      gone => gone,
    );
    await fs.rm(PAGE);
  });

  it('says what to do where nothing can be shown', async () => {
    const settings = inWorkspace('evengrey.json').fsPath;
    const before = await fs.readFile(settings, 'utf8');
    await fs.writeFile(settings, '{ "proces": "inkjet" }');
    try {
      await webviewText('.empty', /evengrey\.json cannot be used/);
      await webviewClick('[data-act="settings"]');
      await workbenchText('.tab.active', /evengrey\.json/);
    } finally {
      await fs.writeFile(settings, before);
    }
    await vscode.commands.executeCommand('evengrey.showBook');
    await webviewText('.verdict', /2 of 7/);
  });

  inEachTheme('is readable', async theme => {
    await webviewClick(contact('plate-2.jpg'));
    await webviewClick(contact('plate-7.tif'), { modifiers: ['Control'] });
    await sleep(300);
    assert.deepEqual(await webviewAxe('.book'), []);
    await screenshot(`overview-${theme}`);
  });
});
