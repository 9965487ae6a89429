import assert from 'node:assert/strict';
import { sheetOf } from '../../../src/report/sheet';
import { brokenFacts } from '../../book/support/facts';
import { finding, picture } from '../text/support';

const options = { light: null, series: 0 };

describe('a picture’s sheet', () => {
  const of = sheetOf(picture('a/b.png', [finding('untagged', 'note', 'No profile.')]), [], options);

  it('holds ten possible orders a condition, each as long as the file’s own scale', () => {
    assert.equal(of.conditions.length, 1);
    const [{ orders }] = of.conditions;
    assert.equal(orders.length, 10);
    for (const { alone, beside } of orders)
      assert.ok(alone.length === of.scale.colours.length && beside.length === alone.length);
    for (const colour of [...of.scale.colours, ...orders[0].alone]) assert.match(colour, /^#[0-9a-f]{6}$/);
  });

  it('draws the same orders for pictures alike, and others in another series', () => {
    const draw = (series: number) =>
      sheetOf(picture('c.png'), [], { light: null, series }).conditions[0].orders;
    assert.deepEqual(draw(0), of.conditions[0].orders);
    assert.notDeepEqual(draw(1), draw(0));
  });

  it('names process, paper and light in words, and says that it is not the user’s own printer', () => {
    const [{ process, paper, light, basisWords }] = of.conditions;
    assert.deepEqual(
      [process, paper, light],
      ['Offset, coated paper', 'Gloss coated paper', 'Daylight of a viewing booth (D50)'],
    );
    assert.match(basisWords, /not your printer/);
  });

  it('tells what is black in the file from what the print loses', () => {
    const [sound] = picture('c.png').forecasts;
    const shadows = (closedShare: number) => {
      const forecast = { ...sound, range: { ...sound.range, blockedShare: 0.3, closedShare } };
      return sheetOf({ ...picture('c.png'), forecasts: [forecast] }, [], options).conditions[0];
    };
    assert.match(shadows(0).expect.range, /no shade of the picture closes up/);
    assert.match(shadows(0.2).expect.range, /shades on 20 % of the picture close up/);
    assert.ok(shadows(0.2).figures.some(([label, value]) => /of it shades/.test(label) && value === '20 %'));
  });

  it('forecasts no greys of line work', () => {
    const bilevel = picture('c.tif', [], { space: 'grey', bits: 1, encoding: 'bilevel' });
    assert.equal(bilevel.forecasts.length, 1);
    assert.deepEqual(sheetOf(bilevel, [], options).conditions, []);
    const drawing = { ...picture('c.png'), intent: 'line' as const };
    assert.deepEqual(sheetOf(drawing, [], options).conditions, []);
  });

  it('of a picture that cannot be read has no forecast', () => {
    const broken = sheetOf(picture('a.png', [], brokenFacts('truncated')), [], options);
    assert.deepEqual(broken.conditions, []);
    assert.equal(broken.advice.kind, 'mend');
  });
});
