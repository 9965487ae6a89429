import assert from 'node:assert/strict';
import { sheetOf } from '../../../src/report/sheet';
import { screenColour } from '../../../src/report/sheet/colour';
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

  it('says how large it is printed, and how that is known', () => {
    const turned = { width: 3000, height: 2000, orientation: 6, ppi: null };
    const placed = { ...picture('c.png', [], turned), placed: { width: 100 } };
    assert.deepEqual(sheetOf(placed, [], options).size, {
      ...{ width: 2000, height: 3000 },
      printed: { perMm: 20, from: 'placed' },
    });
    const alone = sheetOf(picture('c.png', [], turned), [], options).size;
    assert.equal(alone!.printed.from, 'assumed');
    assert.equal(sheetOf(picture('a.png', [], brokenFacts('truncated')), [], options).size, null);
  });

  it('knows what prints like black, and how much of the picture does', () => {
    const of = picture('c.png');
    const [sound] = of.forecasts;
    // in print all is 5 lighter than in the file, whose only tone lies at L* 54
    const zones = [20, 80].map(L => ({ ...sound.zones[0], L, Lprint: L + 5 }));
    const closed = (black: number) => {
      const forecast = { ...sound, zones, range: { ...sound.range, black } };
      return sheetOf({ ...of, forecasts: [forecast] }, [], options).conditions[0].closed;
    };
    assert.deepEqual(closed(57), { below: 55, share: 1 });
    assert.deepEqual(closed(40), { below: 38, share: 0 });
  });

  it('has a limit of ink only where the inks of the file lie on the paper', () => {
    const inks = { space: 'cmyk', channels: 4, encoding: 'four-channel' } as const;
    const limit = (target: object) => {
      const of = picture('c.tif', [], inks);
      const targets = of.targets.map(own => ({ ...own, ...target }));
      return sheetOf({ ...of, targets }, [], options).conditions[0]?.inkLimit;
    };
    assert.deepEqual(limit({ route: 'inks', inkLimit: 280 }), { percent: 280, stated: true });
    assert.equal(limit({ route: 'inks' })?.stated, false);
    assert.equal(limit({ route: 'separated' }), null);
    assert.equal(sheetOf(picture('c.png'), [], options).conditions[0].inkLimit, null);
  });

  it('draws its orders in numbers as on the screen', () => {
    for (const { alone, beside, lab } of of.conditions[0].orders)
      for (const [i, [L, a, b]] of lab.beside.entries()) {
        assert.equal(screenColour(L, a, b), beside[i]);
        assert.equal(screenColour(...lab.alone[i]), alone[i]);
      }
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
