import assert from 'node:assert/strict';
import { goAlike, kindOf } from '../../../src/print/record/reading';
import { samplesOf } from '../../../src/print/samples';
import { greyScale, inkScale } from '../facts';

describe('the encoding that a picture is read by', () => {
  it('goes by what it stores', () => {
    const kind = (facts: Parameters<typeof samplesOf>[0]) => kindOf(samplesOf(facts)!);
    assert.equal(kind(greyScale()), 'rgb-neutral');
    assert.equal(kind(inkScale(v => [0, 0, 0, v], 'black-only')), 'black-only');
    assert.equal(kind(inkScale(v => [v, v, v, v], 'four-channel')), 'four-channel');
  });
});

describe('encodings that go the same way through the machine', () => {
  it('are one grey channel and R = G = B where R, G, B is printed', () => {
    assert.ok(goAlike('rgb-neutral', 'single-channel', 'rgb', 'rgb'));
    assert.ok(!goAlike('rgb-neutral', 'four-channel', 'rgb', 'rgb'), 'what is made of inks there is a guess');
    assert.ok(!goAlike('black-only', 'single-channel', 'rgb', 'rgb'));
  });
  it('are both where a press separates both, and not where grey values go to the black plate', () => {
    assert.ok(goAlike('single-channel', 'rgb-neutral', 'inks', 'separated'));
    for (const route of ['unknown', 'inks', 'black-plate'] as const)
      assert.ok(!goAlike('single-channel', 'rgb-neutral', 'inks', route), route);
  });
});
