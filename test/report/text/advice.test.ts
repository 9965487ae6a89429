import assert from 'node:assert/strict';
import type { EncodingAdvice } from '../../../src/print';
import { adviceText } from '../../../src/report/text/advice';

const line = (change: Partial<EncodingAdvice>): EncodingAdvice => ({
  process: 'inkjet',
  paper: 'matt-coated',
  encoding: 'rgb-neutral',
  verdict: 'send',
  better: null,
  evenOrders: 7,
  evenOrdersBest: 7,
  evenOrdersWorst: 7,
  pageScatter: 0.3,
  black: 17.6,
  ground: 'guess',
  ...change,
});

describe('advice on encodings as text', () => {
  it('is a block a press and a row an encoding', () => {
    const text = adviceText(
      [
        line({}),
        line({
          encoding: 'four-channel',
          verdict: 'convert',
          better: 'single-channel',
          evenOrders: 5.8,
          evenOrdersWorst: 4.2,
          evenOrdersBest: 9.8,
        }),
        line({ encoding: 'black-only', verdict: 'ask', process: 'dry-toner', paper: 'gloss-coated' }),
      ],
      { width: 80, colour: false },
    );
    const blocks = text.trimEnd().split('\n\n');
    assert.equal(blocks.length, 3);
    assert.match(blocks[0], /not of your\sprinter/);
    assert.match(blocks[0].replace(/\n/g, ' '), /a book all of whose pictures are stored so/);
    assert.match(blocks[1], /^Inkjet; Matt coated paper\n/);
    assert.match(blocks[1], /rgb-neutral +can be sent +7 +18 +guess/);
    assert.match(blocks[1], /four-channel +convert to single-channel +6 \(4 to 9\+\) +18/);
    assert.match(blocks[2], /black-only +ask the print house/);
  });
});
