import assert from 'node:assert/strict';
import { factLines } from '../../../src/report/sheet/facts';
import type { PictureReport } from '../../../src/shared/finding';
import type { PictureFacts } from '../../../src/shared/picture';
import { brokenFacts, greyFacts } from '../../book/support/facts';
import { picture } from '../text/support';

const lines = (facts: PictureFacts, placed: PictureReport['placed'] = null) =>
  Object.fromEntries(factLines({ ...picture('a.tif'), facts, placed }));

describe('facts in words', () => {
  it('say how the picture is stored', () => {
    const facts = { ...greyFacts('0'), channels: 3, bits: 16, alpha: true, ppi: { x: 300, y: 299.9 } };
    assert.equal(lines(facts)['Stored as'], '3 channels of 16 bits, with transparency');
    assert.equal(lines(facts).Resolution, "300 pixels per inch by the file's own tag");
    assert.equal(
      lines({ ...facts, ppi: { x: 300, y: 150 } }).Resolution,
      "300 × 150 pixels per inch by the file's own tag",
    );
    assert.equal(
      lines({ ...facts, channels: 1, bits: 1 })['Stored as'],
      'one channel of 1 bit, with transparency',
    );
  });

  it('tell the resolution at which the picture is placed from that of its tag', () => {
    // 1000 pixels on 100 mm are 254 to the inch; on 50 mm 508
    const facts = { ...greyFacts('0'), width: 1000, height: 500, ppi: { x: 25, y: 25 } };
    const placed = (size: PictureReport['placed']) => lines(facts, size)['As placed'];
    assert.equal(lines(facts, { width: 100 }).Resolution, "25 pixels per inch by the file's own tag");
    assert.equal(placed({ width: 100 }), '254 pixels per inch at a width of 100 mm');
    assert.equal(placed({ height: 25 }), '508 pixels per inch at a height of 25 mm');
    assert.equal(placed({ width: 50, height: 50 }), '254 pixels per inch at 50 mm × 50 mm');
    assert.equal(placed(null), undefined, 'the tag is no size in print');
    assert.equal(lines({ ...facts, ppi: null }, { width: 100 }).Resolution, undefined);
  });

  it('leave out what is not known', () => {
    const broken = lines(brokenFacts('empty'));
    assert.ok(!('Resolution' in broken) && !('Ink' in broken) && !('Lightness' in broken));
    const cutOff = { ...brokenFacts('truncated'), channels: 3, space: 'rgb' as const };
    assert.ok(!('Profile' in lines(cutOff)), 'nobody knows whether it has one');
    assert.equal(lines({ ...cutOff, unreadable: null }).Profile, 'none');
    for (const value of Object.values(broken)) assert.doesNotMatch(value, /undefined|null|NaN/);
  });
});
