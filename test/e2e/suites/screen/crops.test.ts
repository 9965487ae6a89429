import assert from 'node:assert/strict';
import { closeAll, until } from '../../editor';
import { screenshot, webviewClick, webviewCount, webviewEval, webviewText } from '../../window';
import { looked, open } from './opened';

/** Mean of R, G, B over a drawing: 0 is the file's own. */
const meanOf = (crop: number) =>
  webviewEval<number[]>(
    '.crop-row',
    `(() => {
      const { width, height } = element.querySelectorAll('.pair canvas:first-child')[${crop}];
      const draw = element.querySelectorAll('.pair canvas:first-child')[${crop}].getContext('2d');
      const { data } = draw.getImageData(0, 0, width, height);
      return [0, 1, 2].map(c => data.reduce((sum, v, i) => i % 4 === c ? sum + v : sum, 0) / (width * height));
    })()`,
  );
const tintOf = async (crop: number) => {
  const [r, g, b] = await meanOf(crop);
  return Math.hypot(r - g, b - g);
};

describe('the same part on every print', () => {
  before(looked);
  beforeEach(async () => {
    await open('pictures/plate-2.png');
    await webviewText('.crop-row', /possible order/);
  });
  afterEach(closeAll);

  it('stands beside the file and neutral greys, as one possible order, and another on request', async () => {
    assert.equal(await webviewCount('.crop-row figure'), 3);
    const text = await webviewText('.crop-row');
    assert.match(text, /no forecast/);
    assert.match(text, /Offset, uncoated paper.*\s+possible order 1\s/);
    const first = await meanOf(1);
    await webviewClick('label[for="order-4"]');
    await webviewText('.crop-row', /possible order 5/);
    assert.notDeepEqual(await meanOf(1), first);
  });

  it('is strengthened when asked, and says so on every drawing', async () => {
    const before = await tintOf(2);
    await webviewClick('label[for="times-4"]');
    const text = await webviewText('.crop-row', /4 times as strong/);
    assert.equal(text.match(/4 times as strong as forecast: no print looks so/g)?.length, 2);
    assert.ok((await tintOf(2)) > 2 * before);
    await webviewEval('.crops', 'element.scrollIntoView()');
    await screenshot('screen-crops', { height: 1000 });
  });

  it('follows what is seen above', async () => {
    const whole = await meanOf(0);
    await webviewClick('#zoom-one');
    await until(
      'the middle of the picture',
      () => meanOf(0),
      mean => Math.abs(mean[0] - whole[0]) > 3,
    );
  });
});
