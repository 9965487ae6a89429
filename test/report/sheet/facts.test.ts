import assert from 'node:assert/strict';
import { factLines } from '../../../src/report/sheet/facts';
import { brokenFacts, greyFacts } from '../../book/support/facts';

const lines = (facts: Parameters<typeof factLines>[0]) => Object.fromEntries(factLines(facts));

describe('facts in words', () => {
  it('say how the picture is stored', () => {
    const facts = { ...greyFacts('0'), channels: 3, bits: 16, alpha: true, ppi: { x: 300, y: 299.9 } };
    assert.equal(lines(facts)['Stored as'], '3 channels of 16 bits, with transparency');
    assert.equal(lines(facts).Resolution, '300 pixels per inch');
    assert.equal(lines({ ...facts, ppi: { x: 300, y: 150 } }).Resolution, '300 × 150 pixels per inch');
    assert.equal(
      lines({ ...facts, channels: 1, bits: 1 })['Stored as'],
      'one channel of 1 bit, with transparency',
    );
  });

  it('leave out what is not known', () => {
    const broken = lines(brokenFacts('empty'));
    assert.ok(!('Resolution' in broken) && !('Ink' in broken) && !('Lightness' in broken));
    for (const value of Object.values(broken)) assert.doesNotMatch(value, /undefined|null|NaN/);
  });
});
