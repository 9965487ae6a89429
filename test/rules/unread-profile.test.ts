import assert from 'node:assert/strict';
import { shiftUnread } from '../../src/rules/unread-profile';
import { picture, profile } from './support/pictures';

/** CIE 15: L* of a luminance 0-1. */
const lightness = (y: number) => (y > (6 / 29) ** 3 ? 116 * Math.cbrt(y) - 16 : (y * 24389) / 27);

const grey = (L: number, value: number, description: string | null) => {
  const facts = picture('single-channel', { tones: [L] }).facts;
  facts.zones[0].clusters[0].mean = [value];
  facts.profile = description === null ? null : profile(description, 'grey');
  return facts;
};

describe('a profile that is not read', () => {
  it('makes of linear values what their sRGB curve says', () => {
    // IEC 61966-2-1: a value of .5 is a luminance of .214, which is L* 53.4; linear it is .5, L* 76.1
    const shift = shiftUnread(grey(lightness(0.5), 0.5, 'Linear'));
    assert.ok(Math.abs(shift - (53.4 - 76.1)) < 0.1, `${shift}`);
  });
  it('makes nothing of a picture without one, or with one for other channels', () => {
    assert.equal(shiftUnread(grey(lightness(0.5), 0.5, null)), 0);
    const facts = grey(lightness(0.5), 0.5, 'Wide');
    facts.profile!.space = 'rgb';
    assert.equal(shiftUnread(facts), 0);
  });
});
