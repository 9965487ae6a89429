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
    const shadows = (space: 'rgb' | 'cmyk', encoding: 'rgb-neutral' | 'four-channel') => {
      const { facts, forecasts, ...rest } = picture('c.png');
      const histogram = [0.3, ...facts.tone!.histogram.slice(1)];
      const [forecast] = forecasts.map(f => ({ ...f, range: { ...f.range, blockedShare: 0.3 } }));
      const dark = { ...facts, space, encoding, tone: { ...facts.tone!, histogram } };
      return sheetOf({ ...rest, facts: dark, forecasts: [forecast] }, [], options).conditions[0].expect.range;
    };
    assert.match(shadows('rgb', 'rgb-neutral'), /30 % of the picture is black in the file, and no shade/);
    // full ink has a lightness like any other
    assert.match(shadows('cmyk', 'four-channel'), /30 % of the picture prints like it, .* included\.$/);
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
