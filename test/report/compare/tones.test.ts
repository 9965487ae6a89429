import assert from 'node:assert/strict';
import { toneDifferences, toneMoved } from '../../../src/report/compare/tones';
import { greyFacts } from '../../book/support/facts';

/** A picture of these tones, in equal shares. */
function of(...tones: number[]) {
  const histogram = new Array<number>(101).fill(0);
  for (const L of tones) histogram[L] += 1 / tones.length;
  return greyFacts('', { tone: { darkest: Math.min(...tones), lightest: Math.max(...tones), histogram } });
}
function coloured(mean: number, hue: number | null) {
  const { chroma } = greyFacts('');
  return greyFacts('', { chroma: { ...chroma!, mean, hue } });
}
const words = (...sides: Parameters<typeof toneDifferences>) =>
  toneDifferences(...sides).map(each => each.words);

describe('what is otherwise in lightness and colour', () => {
  it('is how light the picture is on average, and where its tones end', () => {
    assert.deepEqual(words(of(20, 50, 80), of(10, 40, 70)), [
      'darker, or another picture: L* 50.0, now 40.0 on average',
      'darkest tone L* 20, now 10',
      'lightest tone L* 80, now 70',
    ]);
    assert.match(
      words(of(20, 50, 80), of(20, 60, 80))[0],
      /^lighter, or another picture: L\* 50\.0, now 53\.3 on average$/,
    );
  });

  it('says that it goes by what numbers mean where these are of two kinds', () => {
    const inks = { ...of(10, 40, 70), space: 'cmyk' as const };
    assert.match(
      words(of(20, 50, 80), inks)[0],
      / on average, as far as two ways of storing a picture can be compared$/,
    );
  });

  it('is contrast too, which leaves the average as it was', () => {
    assert.deepEqual(words(of(20, 80), of(30, 70)), [
      'tones spread otherwise, or another picture: by 10.0 L* on average; as light as before on the whole (L* 50)',
      'darkest tone L* 20, now 30',
      'lightest tone L* 80, now 70',
    ]);
  });

  it('measures how far tones moved, whatever the size of the picture', () => {
    assert.equal(toneMoved(of(20, 80), of(80, 20, 20, 80)), 0);
    assert.ok(Math.abs(toneMoved(of(20, 80), of(23, 80)) - 1.5) < 1e-9);
    assert.deepEqual(words(of(20, 80), of(20, 80)), []);
  });

  it('is a mark of colour, too small for the average to know of', () => {
    const marked = (max: number) => greyFacts('', { chroma: { ...greyFacts('').chroma!, mean: 0.2, max } });
    assert.deepEqual(words(marked(0), marked(75)), ['strongest colour C* 0, now 75']);
    assert.deepEqual(words(marked(10), marked(12)), []);
  });

  it('is colour that came, went or turned', () => {
    assert.deepEqual(words(coloured(0.1, null), coloured(3.25, 60)), [
      'more colour: C* 0.1, now 3.3 on average',
    ]);
    assert.deepEqual(words(coloured(5, 60), coloured(0, null)), ['less colour: C* 5.0, now 0.0 on average']);
    assert.deepEqual(words(coloured(5, 350), coloured(5.1, 20)), ['another hue: 350°, now 20° on average']);
    assert.deepEqual(words(coloured(5, 355), coloured(5.1, 3)), []);
    assert.deepEqual(words(coloured(0.3, 10), coloured(0.3, 200)), [], 'of next to no colour no hue is told');
  });
});
