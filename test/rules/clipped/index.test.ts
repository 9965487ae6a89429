import assert from 'node:assert/strict';
import { judged } from '../support/judged';
import { type PictureOptions, picture } from '../support/pictures';

function cut(lights: number, shadows: number, options: PictureOptions = {}) {
  const whole = picture('rgb-neutral', options);
  whole.facts.tone!.clipped = { lights, shadows };
  return judged([whole], 'clipped').pictures[0];
}

describe('clipped', () => {
  describe('passes', () => {
    it('spots of white and some black', () => assert.equal(cut(0.04, 0.09).length, 0));
    it('line art and colour', () => {
      assert.equal(cut(0.5, 0.5, { intent: 'line' }).length, 0);
      assert.equal(cut(0.5, 0.5, { intent: 'colour' }).length, 0);
    });
    it('a picture of which nobody knows it', () =>
      assert.deepEqual(judged([picture('rgb-neutral')], 'clipped').named, []));
  });
  describe('fails', () => {
    it('a sky of bare paper', () => {
      const [finding] = cut(0.12, 0);
      assert.equal(finding.severity, 'note');
      assert.match(finding.message, /^About 12 % of this picture prints as bare paper/);
    });
    it('shadows of one flat black', () =>
      assert.match(cut(0, 0.3)[0].message, /30 % of this picture prints as one flat black/));
    it('both', () => assert.equal(cut(0.2, 0.3).length, 2));
  });
});
