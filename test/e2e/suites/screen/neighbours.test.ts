import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, until } from '../../editor';
import { press, screenshot, webviewClick, webviewCount, webviewEval, webviewText } from '../../window';
import { looked, open } from './opened';

const inFront = () => vscode.window.tabGroups.activeTabGroup.activeTab?.label;
/** R, G, B of a place in the first picture of the spread. */
const pageAt = (share: number) =>
  webviewEval<number[]>(
    '.pages canvas',
    `[...element.getContext('2d').getImageData(element.width / 2, element.height * ${share}, 1, 1).data].slice(0, 3)`,
  );

describe('a picture in its book', () => {
  before(looked);
  afterEach(closeAll);

  it('leads to the pictures before and after it, by click and by key', async () => {
    await open('pictures/plate-2.png');
    assert.match(await webviewText('.neighbours'), /← plate-1\.jpg\s+plate-3\.tif →/);
    await webviewClick('#before');
    await until('the one before', inFront, label => label === 'plate-1.jpg');
    await webviewText('h1', /plate-1/);
    assert.equal(await webviewCount('#before'), 0);
    await webviewText('#zoom-told', /%/);
    await webviewEval('#picture', 'element.focus()');
    await press('PageDown');
    await until('the one after', inFront, label => label === 'plate-2.png');
  });

  it('stands beside what faces it on its spread, in the same possible order', async () => {
    await open('pictures/plate-2.png');
    const text = await webviewText('.facing', /this picture/);
    assert.match(text, /plate-1\.jpg: one possible order\s+plate-2\.png, this picture: one possible order/);
    const first = await pageAt(0.3);
    await webviewClick('label[for="facing-1"]');
    await until(
      'another order',
      () => pageAt(0.3),
      rgb => rgb.join() !== first.join(),
    );
    await webviewClick('label[for="facing-file"]');
    await webviewText('.facing', /plate-1\.jpg: the file, no forecast/);
    const [r, g, b] = await until(
      'the file',
      () => pageAt(0.3),
      rgb => rgb[0] === rgb[1],
    );
    assert.ok(r === g && g === b);
    await webviewEval('.facing', 'element.scrollIntoView()');
    await screenshot('screen-facing', { height: 1000 });
  });

  it('on no spread stands alone', async () => {
    await open('pictures/plate-3.tif');
    assert.equal(await webviewEval('main', 'element.querySelector(".facing").hidden'), true);
  });
});
