import assert from 'node:assert/strict';
import { betterThan, evenest, isForeign, sendable, type Way } from '../../src/print/choice';
import { defaultTarget } from '../../src/print/target';
import type { GreyEncoding, Target } from '../../src/shared/target';

const press = { ...defaultTarget('offset-coated'), paper: 'gloss-coated' } as Target;
const photographic = { ...defaultTarget('silver-halide'), paper: 'photo-lustre' } as Target;
const black = (L: number, weakest = L): Way['black'] => ({
  black: L,
  blackDeepest: L,
  blackWeakest: weakest,
});
const way = (encoding: GreyEncoding, probability: number, more: Partial<Way> = {}): Way => ({
  ...{ encoding, probability, black: black(10), reading: null, stored: 0 },
  ...more,
});
const now = (encoding: GreyEncoding, probability: number, reading: Way['reading'] = null) => ({
  ...{ encoding, probability, reading },
});

describe('the choice of an encoding', () => {
  it('is the one that is tinted least often, then the deeper black, then the more frequent', () => {
    const ways = [
      way('rgb-neutral', 0.3, { black: black(12) }),
      way('single-channel', 0.36),
      way('black-only', 0.35, { stored: 3 }),
    ];
    assert.deepEqual([evenest(ways, 0.01)?.encoding, evenest(ways, 0.01)?.why], ['rgb-neutral', 'even']);
    assert.deepEqual([evenest(ways, 0.1)?.encoding, evenest(ways, 0.1)?.why], ['black-only', 'range']);
    const alike = ways.slice(1);
    assert.deepEqual([evenest(alike, 0.1)?.encoding, evenest(alike, 0.1)?.why], ['black-only', 'frequent']);
    assert.equal(evenest([], 0.1), null);
  });
  it('takes no black for deeper that is only likelier: of the same span nothing is known to be lost', () => {
    const span = { blackDeepest: 10, blackWeakest: 12 };
    const ways = [
      way('rgb-neutral', 0.3, { black: { black: 10, ...span } }),
      way('single-channel', 0.3, { black: { black: 12, ...span }, stored: 2 }),
    ];
    assert.equal(evenest(ways, 0.1)?.encoding, 'single-channel');
  });
  it('is none that was not read where prints of the house were read', () => {
    const ways = [way('rgb-neutral', 0.9, { reading: 'own' }), way('single-channel', 0.1)];
    assert.deepEqual([evenest(ways, 0.1)?.encoding, evenest(ways, 0.1)?.why], ['rgb-neutral', 'read']);
  });
  it('leaves what another betters by less than is asked for', () => {
    const ways = [way('rgb-neutral', 0.3), way('single-channel', 0.2)];
    assert.equal(betterThan(now('four-channel', 0.39), ways, press, 0.2), null);
    assert.equal(betterThan(now('four-channel', 0.41), ways, press, 0.2)?.encoding, 'single-channel');
    assert.equal(betterThan(now('four-channel', 0.51), ways, press, 0.2)?.encoding, 'rgb-neutral', 'a tie');
    assert.equal(
      betterThan(now('four-channel', 0.9, 'own'), ways, press, 0.2),
      null,
      'a reading and a guess',
    );
  });
  it('keeps no inks for a process that prints from R, G, B, unless prints of such files were read', () => {
    const ways = [way('rgb-neutral', 0.5), way('single-channel', 0.5)];
    assert.equal(betterThan(now('black-only', 0.4), ways, photographic, 0.2)?.encoding, 'rgb-neutral');
    assert.equal(betterThan(now('black-only', 0.4, 'own'), ways, photographic, 0.2), null);
    assert.equal(betterThan(now('rgb-neutral', 0.6), ways, photographic, 0.2), null);
    assert.equal(betterThan(now('black-only', 0.4), [way('black-only', 0.4)], photographic, 0.2), null);
    assert.ok(isForeign('three-ink', photographic, null) && !isForeign('three-ink', press, null));
  });
});

describe('what greys can be sent as', () => {
  it('is what the target takes', () =>
    assert.deepEqual(sendable({ ...press, encodings: ['four-channel', 'rgb-toned'] }), ['four-channel']));
  it('is one channel or R = G = B where nobody said, and black ink where ink values reach a press', () => {
    const usual = ['rgb-neutral', 'single-channel'];
    assert.deepEqual(sendable(photographic), usual);
    assert.deepEqual(sendable({ ...press, route: 'rgb' }), usual);
    for (const route of ['unknown', 'inks', 'black-plate'] as const)
      assert.deepEqual(sendable({ ...press, route }), [...usual, 'black-only']);
  });
});
