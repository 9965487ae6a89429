import assert from 'node:assert/strict';
import { type OverlayId, overlaysOf } from '../../../src/report/page/overlays';
import { sheetOf } from '../../../src/report/sheet';
import { MARK, type Marks, TRANSPARENT } from '../../../src/shared/look';
import type { Sheet } from '../../../src/shared/sheet';
import { picture } from '../text/support';

const sheet = sheetOf(picture('a.png'), [], { light: null, series: 0 });
const [condition] = sheet.conditions;
const marks: Marks = {
  ...{ width: 5, height: 1 },
  lightness: Uint16Array.of(1199, 1200, TRANSPARENT, 9000, 9000),
  kinds: Uint8Array.of(0, MARK.colour, 0, MARK.lights, MARK.colour | MARK.lights),
  ink: Uint16Array.of(300, 301, 0, 0, 0),
  shares: { colour: 0.031, lights: 0.2, ink: [...new Array(301).fill(0), 0.06, ...new Array(99).fill(0)] },
};
const with_ = (change: Partial<Sheet['conditions'][number]>): Sheet => ({
  ...sheet,
  conditions: [{ ...condition, ...change }],
});
const one = (of: Sheet, id: OverlayId) => overlaysOf(of, 0).find(overlay => overlay.id === id);
const marked = (of: Sheet, id: OverlayId) => [0, 1, 2, 3, 4].filter(cell => one(of, id)!.marks(marks, cell));

describe('what can be marked on the picture', () => {
  it('is left-over colour and clipped lights, with the share of each', () => {
    assert.deepEqual(marked(sheet, 'colour'), [1, 4]);
    assert.match(one(sheet, 'colour')!.told(marks.shares), /3 % of the picture strays/);
    assert.deepEqual(marked(sheet, 'lights'), [3, 4]);
    assert.match(one(sheet, 'lights')!.told(marks.shares), /20 % of the picture is cut off at white/);
    const none = { colour: 0, lights: 0, ink: null };
    assert.match(one(sheet, 'colour')!.told(none), /none/);
    assert.match(one(sheet, 'lights')!.told(none), /none/);
  });

  it('is what the process prints like its black, as a forecast, and nothing that is transparent', () => {
    const deep = with_({ closed: { below: 12, share: 0.4 } });
    assert.deepEqual(marked(deep, 'shadows'), [0]);
    const told = one(deep, 'shadows')!.told(marks.shares);
    assert.match(told, /by the forecast 40 % of the picture, all below L\* 12/);
    assert.match(told, /Offset, coated paper/);
  });

  it('is ink above the limit, where one counts, and says whose limit it is', () => {
    assert.equal(one(sheet, 'ink'), undefined);
    const stated = with_({ inkLimit: { percent: 300, stated: true } });
    assert.deepEqual(marked(stated, 'ink'), [1]);
    assert.match(
      one(stated, 'ink')!.told(marks.shares),
      /6 % of the picture .* 300 % that the settings allow/,
    );
    const usual = with_({ inkLimit: { percent: 320, stated: false } });
    assert.match(
      one(usual, 'ink')!.told(marks.shares),
      /nowhere more than the 320 % that Offset, coated paper usually takes/,
    );
  });

  it('is no fault in a picture that is in colour', () => {
    const coloured = { ...sheet, encoding: { ...sheet.encoding, id: 'colour' as const }, conditions: [] };
    assert.deepEqual(
      overlaysOf(coloured, 0).map(({ name }) => name),
      ['Colour', 'Clipped lights'],
    );
  });
});
