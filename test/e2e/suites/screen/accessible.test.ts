import assert from 'node:assert/strict';
import { closeAll, inEachTheme } from '../../editor';
import { screenshot, webviewAxe, webviewClick, webviewEval, webviewText } from '../../window';
import { looked, open } from './opened';

describe('the page of a picture, for everybody', () => {
  before(looked);
  afterEach(closeAll);

  inEachTheme('has nothing serious against it', async theme => {
    await open('pictures/plate-2.png');
    await webviewText('.facing', /this picture/);
    await webviewClick('#zoom-printed');
    for (const mark of ['colour', 'shadows', 'lights']) await webviewClick(`label[for="mark-${mark}"]`);
    await webviewText('.legend', /Clipped lights: 8 %/);
    await webviewEval('main', 'window.scrollTo(0, 0)');
    await screenshot(`screen-${theme}`, { height: 1300 });
    assert.deepEqual(await webviewAxe('main'), []);
  });

  it('reaches all that is chosen by Tab, the picture first', async () => {
    await open('pictures/plate-2.png');
    const order = await webviewEval<string[]>(
      'main',
      `[...element.querySelectorAll('button, input, select, summary, [tabindex="0"]')]
        .filter(each => each.checkVisibility() && each.tabIndex >= 0)
        .map(each => each.id || each.tagName)`,
    );
    for (const id of ['picture', 'zoom-one', 'zoom-printed', 'mark-colour', 'before', 'times-1', 'facing-0'])
      assert.ok(order.includes(id), `${id} in ${order}`);
    assert.ok(order.indexOf('picture') < order.indexOf('zoom-whole'));
  });
});
