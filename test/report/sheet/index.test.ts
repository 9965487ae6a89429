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

  it('counts the tinted of the ten about as often as the forecast does', () => {
    // over many series the ten are the forecast: three SE of a share of 400 is 0.07
    const orders = Array.from(
      { length: 40 },
      (_, series) => sheetOf(picture('c.png'), [], { light: null, series }).conditions[0],
    );
    const [{ bands }] = orders;
    const seen = orders.flatMap(c => c.orders).filter(order => order.tint.alone).length / 400;
    assert.ok(Math.abs(seen - (bands.visible + bands.obvious + bands.heavy)) < 0.15, `${seen}`);
  });

  it('draws the same orders for every picture, and others in another series', () => {
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

  it('of a picture that cannot be read has no forecast', () => {
    const broken = sheetOf(picture('a.png', [], brokenFacts('truncated')), [], options);
    assert.deepEqual(broken.conditions, []);
    assert.equal(broken.advice.kind, 'mend');
  });
});
