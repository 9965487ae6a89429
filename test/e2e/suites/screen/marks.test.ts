import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeAll, until } from '../../editor';
import {
  screenshot,
  webviewClick,
  webviewCount,
  webviewEval,
  webviewSelect,
  webviewText,
} from '../../window';
import { looked, open } from './opened';

/** How far the greys are apart in a small field of the picture, at shares (0-1) of its width and height. */
const contrastAt = (x: number, y: number) =>
  webviewEval<number>(
    '#picture',
    `(() => {
      const edge = 2 * 28;
      const scale = Math.min((element.clientWidth - edge) / 2400, (element.clientHeight - edge) / 1600);
      const at = (share, length, room) => (room - length * scale) / 2 + share * length * scale;
      const left = at(${x}, 2400, element.clientWidth) * devicePixelRatio;
      const top = at(${y}, 1600, element.clientHeight) * devicePixelRatio;
      const { data } = element.getContext('2d').getImageData(left - 8, top - 8, 16, 16);
      const greys = Array.from({ length: 256 }, (_, i) => data[i * 4]);
      return Math.max(...greys) - Math.min(...greys);
    })()`,
  );
/** Black strokes beside white ones. */
const isMarked = (contrast: number) => contrast > 90;
const plain = (contrast: number) => contrast < 20;

const STAIN = [0.12, 0.12] as const;
const BLACK = [0.1, 0.9] as const;
const WHITE = [0.9, 0.9] as const;

describe('marks on a picture', () => {
  before(looked);
  beforeEach(() => open('pictures/plate-2.png'));
  afterEach(closeAll);

  it('lie on left-over colour, say its share, and go away again', async () => {
    assert.ok(plain(await contrastAt(...STAIN)));
    await webviewClick('label[for="mark-colour"]');
    // 600 x 400 of 2400 x 1600 pixels
    await webviewText('.legend', /Left-over colour: 6 % of the picture/);
    await until('marks on the stain', () => contrastAt(...STAIN), isMarked);
    assert.ok(plain(await contrastAt(...WHITE)));
    await webviewClick('label[for="mark-colour"]');
    await until('no marks', () => contrastAt(...STAIN), plain);
  });

  it('lie on clipped lights', async () => {
    await webviewClick('label[for="mark-lights"]');
    await webviewText('.legend', /Clipped lights: 8 % of the picture is cut off at white/);
    await until('marks on white', () => contrastAt(...WHITE), isMarked);
    assert.ok(plain(await contrastAt(...STAIN)));
  });

  it('lie on shadows that the chosen print closes, as a forecast', async () => {
    await webviewClick('label[for="mark-shadows"]');
    const uncoated = await webviewText('.legend', /Blocked shadows: by the forecast/);
    assert.match(uncoated, /8 % of the picture.*like the black of Offset, uncoated paper/);
    await until('marks on black', () => contrastAt(...BLACK), isMarked);
    await webviewSelect('#mark-on', '1');
    await webviewText('.legend', /black of Silver halide|black of .*[Pp]hoto/);
    await screenshot('screen-marks', { height: 1100 });
  });

  it('lie on too much ink, where inks are kept; of other pictures they are not offered', async () => {
    assert.equal(await webviewCount('#mark-ink'), 0);
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    await open('pictures/plate-3.tif');
    await webviewClick('label[for="mark-ink"]');
    await webviewText(
      '.legend',
      /Total ink: \d+ % of the picture carries more than the 100 % that the settings allow/,
    );
  });
});
