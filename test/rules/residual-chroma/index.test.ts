import assert from 'node:assert/strict';
import { judged } from '../support/judged';
import { leftOver, type PictureOptions, picture, target } from '../support/pictures';

const stamp = { x: 100, y: 1700, width: 60, height: 60, max: 40 };
const found = (options: PictureOptions) =>
  judged([picture('rgb-residual', options)], 'residual-chroma').pictures[0];

describe('residual-chroma', () => {
  describe('passes', () => {
    it('a grey picture', () =>
      assert.deepEqual(judged([picture('rgb-neutral')], 'residual-chroma').named, []));
    it('chroma noise that averages out: no place strays', () =>
      assert.equal(
        found({ facts: { chroma: { ...leftOver(stamp).chroma!, places: [], maxPixel: 6 } } }).length,
        0,
      ));
    it('a place that is too faint or, where it is printed, too small', () => {
      assert.equal(found({ facts: leftOver({ ...stamp, max: 2.4 }) }).length, 0);
      assert.equal(found({ facts: leftOver({ ...stamp, max: 12 }), placed: { width: 10 } }).length, 0);
    });
    for (const intent of ['toned', 'colour'] as const)
      it(`what is meant as ${intent}`, () =>
        assert.equal(found({ facts: leftOver(stamp), intent }).length, 0));
    it('a tone that is the same all over, and colour of which nobody said anything', () =>
      assert.deepEqual(
        judged([picture('rgb-toned', { tone: [3, 8] }), picture('colour')], 'residual-chroma').named,
        [],
      ));
  });

  describe('fails', () => {
    it('a mark, with its place in words and pixels, its printed size and how that is known', () => {
      const [finding] = found({ facts: leftOver(stamp) });
      assert.equal(finding.severity, 'warning');
      assert.match(
        finding.message,
        /at the lower left: 60 x 60 pixels from x 100, y 1700, about 6 mm across in print \(taking the long edge to be 300 mm\), 40 away/,
      );
      assert.deepEqual(finding.data.places, [stamp]);
    });
    it('the place as it is seen, in a picture that is stored on its side', () =>
      assert.match(
        found({ facts: { ...leftOver(stamp), orientation: 6 } })[0].message,
        /at the upper left: .* x 240, y 100/,
      ));
    it('how many more there are', () => {
      const facts = leftOver(stamp);
      facts.chroma!.places.push({ ...stamp, x: 900, max: 30 }, { ...stamp, x: 1500, max: 1 });
      assert.match(found({ facts })[0].message, /There is another such place\./);
    });
    it('colour over much of the picture', () =>
      assert.match(found({ facts: leftOver(stamp, 0.45) })[0].message, /seen on 45 % of the picture/));
    it('inks too', () => {
      const inks = picture('four-channel', { facts: leftOver(stamp) });
      assert.match(
        judged([inks], 'residual-chroma').pictures[0][0].message,
        /or save the whole picture as rgb-neutral/,
        'silver halide takes none',
      );
      const onPress = picture('four-channel', { facts: leftOver(stamp), targets: [target('offset-coated')] });
      assert.match(
        judged([onPress], 'residual-chroma').pictures[0][0].message,
        /turn the whole picture into grey again/,
      );
    });
    it('colour that the settings call grey', () => {
      const [[finding]] = judged([picture('colour', { intent: 'grey' })], 'residual-chroma').pictures;
      assert.match(finding.message, /^This picture prints in colour/);
    });
  });
});
