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

  it('stands in columns, and below the bar that stays when it is scrolled to', async () => {
    // six upright prints in two rows, the second of them with a long name first
    const lefts = await webviewEval<number[]>(
      '.crop-row',
      `(() => {
        const row = element.cloneNode(true);
        row.style.width = '1060px';
        const figure = row.querySelector('figure');
        figure.querySelector('canvas').style.width = '200px';
        row.replaceChildren(...Array.from({ length: 6 }, () => figure.cloneNode(true)));
        row.children[3].querySelector('strong').textContent = 'A long name of a process and its paper, as some have';
        element.after(row);
        const lefts = [...row.children].map(each => Math.round(each.getBoundingClientRect().left));
        row.remove();
        return lefts;
      })()`,
    );
    assert.deepEqual(lefts.slice(3), lefts.slice(0, 3));
    const [top, bar] = await webviewEval<number[]>(
      '#crops-title',
      '(element.scrollIntoView(), [element.getBoundingClientRect().top, document.querySelector(".controls").getBoundingClientRect().bottom])',
    );
    assert.ok(top >= bar, `${top} under ${bar}`);
  });

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
