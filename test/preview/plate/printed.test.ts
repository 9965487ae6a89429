import assert from 'node:assert/strict';
import { measured, printedScale, printedWords } from '../../../src/preview/plate/printed';

const size = { width: 3000, height: 2000 };

describe('the printed size on a screen', () => {
  it('is as many pixels as the print has millimetres', () => {
    // 20 pixels of the picture on a millimetre; a screen of 254 pixels per inch has 10 on one
    assert.equal(printedScale({ perMm: 20, from: 'placed' }, 254), 0.5);
    assert.equal(printedScale({ perMm: 96 / 25.4, from: 'placed' }, null), 1);
  });
  it('says how it is known, and that the screen is not', () => {
    const placed = printedWords(size, { perMm: 20, from: 'placed' }, null);
    assert.match(placed, /150 × 100 mm, as it is placed\. .* taken to have 96 .* measure it once/);
    const ppi = printedWords(size, { perMm: 20, from: 'ppi' }, 109.6);
    assert.match(ppi, /pixels per inch in the file.*By your own measurement the screen has 110/);
    assert.match(printedWords(size, { perMm: 20, from: 'assumed' }, 109), /a guess/);
  });
  it('takes a measured line for what it says, unless no screen is so', () => {
    assert.equal(measured(400, 101.6), 100);
    assert.equal(measured(400, 0), null);
    assert.equal(measured(400, Number.NaN), null);
    assert.equal(measured(400, 4000), null);
  });
});
