import assert from 'node:assert/strict';
import { printsOf } from '../../../src/rules/odd-one-out/prints';
import { picture, target, toneOf } from '../support/pictures';

const [halide, offset] = [target('silver-halide'), target('offset-coated', { name: 'cover' })];

describe('prints to be compared', () => {
  it('are the pictures on each of their targets', () => {
    const both = picture('rgb-neutral', { targets: [halide, offset] });
    const one = picture('rgb-neutral', { targets: [offset] });
    assert.deepEqual(
      printsOf([both, one]).map(prints => prints.map(print => [print.target?.name, print.picture])),
      [
        [[halide.name, both]],
        [
          ['cover', both],
          ['cover', one],
        ],
      ],
    );
  });
  it('are without a target the colours of an RGB file, with nothing of the printer’s', () => {
    const zones = toneOf([[50, 1, 4]]);
    const stored = (encoding: 'rgb-toned' | 'four-channel') => {
      const whole = picture(encoding, { targets: [] });
      whole.facts.chroma!.zones = zones;
      return whole;
    };
    const [[{ target, tints }]] = printsOf([stored('rgb-toned'), stored('four-channel')]);
    assert.equal(target, null);
    assert.deepEqual(tints.zones, [{ L: 50, a: 1, b: 4, weight: 1 }]);
    assert.deepEqual(tints.spread.page, { a: 0, b: 0 });
    assert.deepEqual(printsOf([picture('single-channel', { targets: [] })]), []);
  });
});
