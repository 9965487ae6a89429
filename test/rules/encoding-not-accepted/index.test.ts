import assert from 'node:assert/strict';
import type { Encoding } from '../../../src/shared/picture';
import { judged } from '../support/judged';
import { type PictureOptions, picture, target, unreadable } from '../support/pictures';

const taking = (encodings: Encoding[] | null, name = 'book') => target('offset-coated', { encodings, name });
const named = (encoding: Encoding, encodings: Encoding[] | null, options: PictureOptions = {}) =>
  judged([picture(encoding, { targets: [taking(encodings)], ...options })], 'encoding-not-accepted').named
    .length;

describe('encoding-not-accepted', () => {
  describe('passes', () => {
    it('anything where nobody said what is taken', () => assert.equal(named('three-ink', null), 0));
    it('what is taken', () => assert.equal(named('black-only', ['rgb-neutral', 'black-only']), 0));
    it('a trace of colour where R = G = B is taken', () =>
      assert.equal(named('rgb-residual', ['rgb-neutral']), 0));
    it('a tone that is meant where R = G = B is taken', () =>
      assert.equal(named('rgb-toned', ['rgb-neutral'], { intent: 'toned' }), 0));
    it('colour that is meant', () => assert.equal(named('colour', ['rgb-neutral'], { intent: 'colour' }), 0));
    it('colour of which nobody said what it is', () => assert.equal(named('colour', ['rgb-neutral']), 0));
    it('a picture that could not be read', () => {
      const broken = unreadable('corrupt', '', { targets: [taking(['rgb-neutral'])] });
      assert.deepEqual(judged([broken], 'encoding-not-accepted').named, []);
    });
  });
  describe('fails', () => {
    it('what is not taken, as an error, with the way out', () => {
      const wrong = picture('black-only', { targets: [taking(['rgb-neutral', 'single-channel'])] });
      const [[finding]] = judged([wrong], 'encoding-not-accepted').pictures;
      assert.equal(finding.severity, 'error');
      assert.match(finding.message, /it is black-only \(.*it takes only rgb-neutral and single-channel/);
      assert.match(finding.message, /Save it as rgb-neutral \(RGB with R = G = B\)\.$/);
      assert.doesNotMatch(finding.message, /target/, 'the only target needs no name');
    });
    it('a tone that nobody meant', () => assert.equal(named('rgb-toned', ['rgb-neutral']), 1));
    it('line art', () => assert.equal(named('rgb-neutral', ['bilevel'], { intent: 'line' }), 1));
    it('says how to convert what a conversion of the folder leaves alone, and only of that', () => {
      const message = (encoding: Encoding, accepted: Encoding[], options: PictureOptions = {}) =>
        judged([picture(encoding, { targets: [taking(accepted)], ...options })], 'encoding-not-accepted')
          .pictures[0][0].message;
      const tail = /so a conversion makes that of it only where it is named by itself/;
      const grey: Encoding[] = ['single-channel'];
      const toned: PictureOptions = { intent: 'toned', intentStated: true };
      const chroma = { ...picture('rgb-toned').facts.chroma!, mean: 20 };
      const strong: PictureOptions = { facts: { chroma } };
      assert.match(
        message('bilevel', grey),
        /Save it as single-channel .* It is stored in one bit, .*, so a conv/,
      );
      assert.match(message('bilevel', grey, { intent: 'line', intentStated: true }), tail);
      assert.match(message('rgb-toned', grey, toned), /The settings say that it is meant to be toned, so/);
      assert.match(message('rgb-toned', grey, strong), /has a strong tone, which may be meant, so/);
      for (const plain of ['rgb-neutral', 'black-only', 'rgb-toned'] as const)
        assert.doesNotMatch(message(plain, grey), tail);
      assert.doesNotMatch(message('bilevel', grey, { intent: 'grey', intentStated: true }), tail);
      assert.doesNotMatch(message('bilevel', ['three-ink']), tail, 'no conversion makes three inks');
    });
    it('keeps a tone that is meant where RGB is taken', () => {
      const toned: PictureOptions = { intent: 'toned', intentStated: true };
      const targets = [taking(['single-channel', 'rgb-neutral'])];
      const inks = picture('four-channel', { targets, ...toned });
      const [[finding]] = judged([inks], 'encoding-not-accepted').pictures;
      assert.match(finding.message, /Save it as rgb-toned \(RGB with a tone of its own\)\.$/);
      assert.equal(finding.data.save, 'rgb-toned');
      const black = picture('black-only', { targets, ...toned });
      assert.equal(judged([black], 'encoding-not-accepted').pictures[0][0].data.save, 'rgb-neutral');
    });
    it('once for each target that does not take it, by name', () => {
      const targets = [
        taking(['black-only'], 'book'),
        taking(null, 'dummy'),
        taking(['rgb-neutral'], 'cover'),
      ];
      const [findings] = judged([picture('single-channel', { targets })], 'encoding-not-accepted').pictures;
      assert.deepEqual(
        findings.map(f => f.data.target),
        ['book', 'cover'],
      );
      assert.match(findings[1].message, /\(target "cover"\)/);
    });
  });
});
