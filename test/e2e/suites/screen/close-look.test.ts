import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { closeAll, inWorkspace, until } from '../../editor';
import {
  press,
  screenshot,
  webviewClick,
  webviewDrag,
  webviewEval,
  webviewPoint,
  webviewText,
} from '../../window';
import { looked, open } from './opened';

const LARGE = 'pictures/plate-2.png';

/** Greys of a row of device pixels around the middle of what is drawn. */
const middleRow = () =>
  webviewEval<number[]>(
    '#picture',
    `(() => {
      const { width, height } = element;
      const { data } = element.getContext('2d').getImageData((width >> 1) - 20, height >> 1, 40, 1);
      return Array.from({ length: 40 }, (_, i) => data[i * 4]);
    })()`,
  );
const told = () => webviewText('#zoom-told', /%/);
const percent = async () => Number.parseFloat(await told());

describe('a close look at a picture', () => {
  before(looked);
  beforeEach(() => open(LARGE));
  afterEach(closeAll);

  it('shows all of it, then every pixel as it is stored', async () => {
    assert.ok((await percent()) < 60);
    await webviewClick('#zoom-one');
    assert.equal(await told(), '100 %');
    // lines of one pixel: 40 and 200 in turn
    const row = await until('sharp lines', middleRow, greys =>
      greys.every((grey, i) => i === 0 || Math.abs(grey - greys[i - 1]) === 160),
    );
    assert.deepEqual([Math.min(...row), Math.max(...row)], [40, 200]);
    await screenshot('screen-one-to-one');
  });

  it('is taken away with all its tools when its file is gone, and comes back with it', async () => {
    const file = inWorkspace('pictures/gone.png').fsPath;
    const picture = await fs.readFile(inWorkspace(LARGE).fsPath);
    await fs.writeFile(file, picture);
    await open('pictures/gone.png');
    await fs.rm(file);
    await webviewText('.close .picture', /There is no such file/);
    const seen = (selector: string) =>
      webviewEval<boolean>('main', `element.querySelector('${selector}').checkVisibility()`);
    assert.equal(await seen('#picture'), false);
    assert.equal(await seen('#zoom-one'), false);
    assert.equal(await seen('.marks'), false);
    await webviewText('.advice', /Put the file right first/);
    assert.doesNotMatch(await webviewText('main'), /Unknown format|pixels/);
    await screenshot('screen-gone');
    await fs.writeFile(file, picture);
    await until('the picture again', () => seen('#picture'), Boolean);
    assert.equal(await seen('#zoom-one'), true);
    await fs.rm(file);
  });

  it('goes by keys alone: larger, smaller, all of it, 1:1, and about', async () => {
    await webviewEval('#picture', 'element.focus()');
    const whole = await percent();
    await press('+');
    assert.ok((await percent()) > whole);
    await press('-');
    assert.equal(await percent(), whole);
    await press('1');
    assert.equal(await told(), '100 %');
    const before = await middleRow();
    for (let i = 0; i < 12; i++) await press('ArrowRight');
    await until('another place', middleRow, row => row.join() !== before.join());
    await press('0');
    assert.equal(await percent(), whole);
    assert.equal(await webviewEval('#zoom-whole', 'element.ariaPressed'), 'true');
  });

  it('goes by wheel and by dragging', async () => {
    const whole = await percent();
    await webviewPoint('#picture', { x: 200, y: 150, wheel: -200, ctrl: true });
    await until('twice as large', percent, size => Math.abs(size / whole - 2) < 0.05);
    const before = await middleRow();
    await webviewDrag('#picture', -120, -40);
    await until('another place', middleRow, row => row.join() !== before.join());
  });

  it('tells the stored values under the pointer, read from the file', async () => {
    await webviewClick('#zoom-one');
    // 300 lines of one pixel on each side of the middle; x 1200 is even, so dark
    const middle = await webviewEval<[number, number]>(
      '#picture',
      '[element.clientWidth / 2, element.clientHeight / 2]',
    );
    await webviewPoint('#picture', { x: middle[0] + 0.5, y: middle[1] });
    const text = await webviewText('#reading', /L\*/);
    const [, x, value] =
      /x (\d+), y \d+: R (\d+) {2}G \2 {2}B \2 of 255; L\* [\d.]+ {2}a\* 0\.0 {2}b\* 0\.0, chroma 0\.0/.exec(
        text,
      )!;
    assert.equal(value, Number(x) % 2 ? '200' : '40');
  });

  it('tells them by keyboard too, pixel by pixel', async () => {
    await webviewEval('#picture', 'element.focus()');
    await press('1');
    await press('Shift+ArrowRight');
    const first = await webviewText('#reading', /L\*/);
    await press('Shift+ArrowRight');
    const [x, value] = [/x (\d+)/, /R (\d+)/].map(part => Number(part.exec(first)![1]));
    const next = await webviewText('#reading', new RegExp(`x ${x + 1},.*L\\*`));
    assert.match(next, new RegExp(`R ${value === 40 ? 200 : 40} `));
  });

  it('goes on by keyboard from where the pointer read last', async () => {
    await webviewClick('#zoom-one');
    await webviewPoint('#picture', { x: 90, y: 70 });
    const pointed = await webviewText('#reading', /x \d+, y \d+.*L\*/);
    const [x, y] = [/x (\d+)/, /y (\d+)/].map(part => Number(part.exec(pointed)![1]));
    await press('Shift+ArrowRight');
    await webviewText('#reading', new RegExp(`x ${x + 1}, y ${y}:`));
  });

  it('hears its keys after a click on a tool beside it', async () => {
    const whole = await percent();
    await webviewClick('label[for="mark-colour"]');
    await until(
      'the picture in focus',
      () => webviewEval<string>('#picture', 'element.ownerDocument.activeElement.id'),
      id => id === 'picture',
    );
    await press('+');
    assert.ok((await percent()) > whole);
    await webviewClick('label[for="mark-colour"]');
  });

  it('moves nothing under the pointer when it says how large it is printed, or what is read', async () => {
    const tops = () =>
      webviewEval<number[]>(
        '#close-look, .close',
        '["#reading", ".marks"].map(id => Math.round(element.querySelector(id).getBoundingClientRect().top - element.getBoundingClientRect().top))',
      );
    await webviewClick('#zoom-whole');
    const before = await tops();
    await webviewClick('#zoom-printed');
    assert.deepEqual(await tops(), before);
    await webviewPoint('#picture', { x: 100, y: 100 });
    await webviewText('#reading', /L\*/);
    assert.deepEqual(await tops(), before);
  });

  it('is as large as its print, and lets the screen be measured once', async () => {
    await webviewClick('#zoom-printed');
    const guess = await webviewText('#printed-told', /120 × 80 mm, as it is placed/);
    assert.match(guess, /taken to have 96 pixels on an inch, which few have/);
    // 2400 pixels on 120 mm
    await webviewText('.encoding dl', /As placed\s*508 pixels per inch at a width of 120 mm/);
    // 120 mm on a screen of 96 pixels per inch
    assert.ok(Math.abs((await percent()) - (100 * (120 / 25.4) * 96) / 2400) < 0.5);
    await webviewClick('#measure summary');
    await webviewEval('#ruler-mm', '(element.value = "80", element.dispatchEvent(new Event("input")))');
    await webviewClick('#ruler-use');
    try {
      await webviewText('#printed-told', /By your own measurement the screen has 127/);
      assert.ok(Math.abs((await percent()) - (100 * (120 / 25.4) * 127) / 2400) < 0.5);
      assert.equal(vscode.workspace.getConfiguration('evengrey').get('screenPixelsPerInch'), 127);
    } finally {
      await vscode.workspace
        .getConfiguration('evengrey')
        .update('screenPixelsPerInch', undefined, vscode.ConfigurationTarget.Global);
    }
  });

  it('keeps its place while it is hidden', async () => {
    await webviewClick('#zoom-one');
    await vscode.commands.executeCommand('vscode.open', inWorkspace('evengrey.json'), { preview: false });
    await open(LARGE);
    assert.equal(await told(), '100 %');
  });
});
