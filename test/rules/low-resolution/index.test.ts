import assert from 'node:assert/strict';
import { judged } from '../support/judged';
import { type PictureOptions, picture, unreadable } from '../support/pictures';

/** 3000 x 2000 pixels; 1 inch = 25.4 mm. */
const found = (options: PictureOptions, encoding: 'rgb-neutral' | 'bilevel' = 'rgb-neutral') =>
  judged([picture(encoding, options)], 'low-resolution').pictures[0];

describe('low-resolution', () => {
  describe('passes', () => {
    it('enough pixels at the placed size: 3000 on 300 mm are 254 an inch', () =>
      assert.equal(found({ placed: { width: 300 } }).length, 0));
    it('a picture that is placed nowhere, whatever its own ppi', () =>
      assert.equal(found({ facts: { ppi: { x: 72, y: 72 } } }).length, 0));
    it('a picture that could not be read', () =>
      assert.deepEqual(
        judged([unreadable('corrupt', '', { placed: { width: 9000 } })], 'low-resolution').named,
        [],
      ));
  });
  describe('fails', () => {
    it('too few, with the size that it may have', () => {
      const [finding] = found({ placed: { width: 508 } });
      assert.equal(finding.severity, 'warning');
      assert.match(
        finding.message,
        /has 150 pixels an inch, and 200 are wanted\. Place it no larger than 381 x 254 mm/,
      );
    });
    it('a frame that is filled: the edge that is stretched more decides', () =>
      assert.match(found({ placed: { width: 254, height: 508 } })[0].message, /has 100 pixels/));
    it('a picture on its side: its width is seen as height', () =>
      assert.match(
        found({ placed: { width: 508 }, facts: { orientation: 6 } })[0].message,
        /has 100 pixels/,
      ));
    it('line art much earlier', () => {
      const placed = { width: 254 };
      assert.match(
        found({ placed, intent: 'line' })[0].message,
        /line art .* has 300 pixels an inch, and 600 are wanted/,
      );
      assert.equal(found({ placed }, 'bilevel').length, 1);
    });
    it('so few that no size in a book has enough, without naming one', () => {
      const [{ message }] = found({ placed: { width: 100 }, facts: { width: 100, height: 60 } });
      assert.match(
        message,
        /^This picture prints soft at any size .* 100 x 60 pixels, at its placed size 25 an inch/,
      );
      assert.doesNotMatch(message, / mm/);
      assert.match(
        found({ placed: { width: 100 }, facts: { width: 160, height: 60 } })[0].message,
        /no larger than 20 x 7 mm/,
      );
    });
    it('pictures in colour too', () =>
      assert.equal(found({ placed: { width: 508 }, intent: 'colour' }).length, 1));
  });
});
