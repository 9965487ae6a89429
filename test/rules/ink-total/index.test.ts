import assert from 'node:assert/strict';
import { processOf } from '../../../src/print/processes';
import type { Target } from '../../../src/shared/target';
import { judged } from '../support/judged';
import { type PictureOptions, picture, target } from '../support/pictures';

const carrying = (maxTotal: number, targets: Target[], options: PictureOptions = {}) =>
  picture('four-channel', { targets, facts: { ink: { maxTotal, meanTotal: 100 } }, ...options });
const found = (maxTotal: number, t: Target, options: PictureOptions = {}) =>
  judged([carrying(maxTotal, [t], options)], 'ink-total').pictures[0];

/** Limits here are the settings' or the process file's own: the rule takes no figure from elsewhere. */
const limited = target('offset-coated', { inkLimit: 300 });
const usual = processOf('offset-coated').inkLimit!;

describe('ink-total', () => {
  describe('passes', () => {
    it('what the settings allow, with a little for rounding', () =>
      assert.equal(found(302, limited).length, 0));
    it("what the process usually takes, where the settings don't say", () =>
      assert.equal(found(usual, target('offset-coated')).length, 0));
    it('where the house separates anew', () =>
      assert.equal(found(400, target('offset-coated', { route: 'separated' })).length, 0));
    it('on photographic paper', () => assert.equal(found(400, target('silver-halide')).length, 0));
    it('a picture without inks', () =>
      assert.deepEqual(judged([picture('rgb-neutral', { targets: [limited] })], 'ink-total').named, []));
  });
  describe('fails', () => {
    it('more than the settings allow, and says whose limit it is', () => {
      const [finding] = found(340.4, limited);
      assert.equal(finding.severity, 'warning');
      assert.match(finding.message, /carry 340 % of ink, and the settings allow 300 %\./);
    });
    it('more than the process usually takes', () => {
      const [finding] = found(usual + 10, target('offset-coated'));
      assert.match(finding.message, new RegExp(`coated offset usually takes ${usual} %`));
    });
    it('pictures in colour too: ink smears whatever it shows', () =>
      assert.equal(found(380, limited, { intent: 'colour' }).length, 1));
  });
});
