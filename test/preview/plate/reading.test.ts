import assert from 'node:assert/strict';
import { readingWords } from '../../../src/preview/plate/reading';
import type { PixelReading } from '../../../src/shared/look';

const lab = { L: 53.61, a: -0.04, b: -2.26, chroma: 2.26 };
const reading = (change: Partial<PixelReading>): PixelReading => ({
  ...{ x: 12, y: 7, alpha: null, full: 255, lab },
  channels: ['R', 'G', 'B'].map((name, i) => ({ name, value: 126 + i })),
  ...change,
});

describe('a pixel in words', () => {
  it('has its stored channels by name and depth, and what they mean', () => {
    assert.equal(
      readingWords(reading({})),
      'x 12, y 7: R 126  G 127  B 128 of 255; L* 53.6  a* 0.0  b* −2.3, chroma 2.3',
    );
  });
  it('has inks in percent too', () => {
    const channels = ['C', 'M', 'Y', 'K'].map((name, i) => ({ name, value: 51 * i }));
    assert.match(
      readingWords(reading({ channels })),
      /C 0 {2}M 51 {2}Y 102 {2}K 153 of 255 \(0 \/ 20 \/ 40 \/ 60 %\);/,
    );
  });
  it('has floating point as it is stored', () => {
    const channels = [{ name: 'Grey', value: -0.25 }];
    assert.match(readingWords(reading({ channels, full: null })), /: Grey −0\.250; L\*/);
  });
  it('says what is seen through, and where nothing is', () => {
    assert.match(readingWords(reading({ alpha: 0.5 })), /of 255, 50 % opaque, on paper white; L\*/);
    assert.match(readingWords(reading({ alpha: 0, lab: null })), /0 % opaque.*; nothing is seen here$/);
  });
});
