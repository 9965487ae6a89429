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
  blackDeepest: 17.6,
  blackWeakest: 17.6,
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
    const all = text.trimEnd().split('\n\n');
    const introduction = all.slice(0, 4).join(' ').replace(/\n/g, ' ');
    const blocks = all.slice(3);
    assert.equal(blocks.length, 3, 'the last paragraph and two presses');
    assert.match(introduction, /not of your printer/);
    assert.match(introduction, /a book all of whose pictures are stored so/);
    assert.match(introduction, /Convert where another encoding .* is even in 2 orders more/);
    assert.match(blocks[1], /^Inkjet; Matt coated paper\n/);
    assert.match(blocks[1], /rgb-neutral +can be sent +7 +18 +guess/);
    assert.match(blocks[1], /four-channel +convert to single-channel +6 \(4 to 9\+\) +18/);
    assert.match(blocks[2], /black-only +ask the print house/);
  });
  it('tells the blacks of all ways, never their mean, and that nothing is evener where even little is', () => {
    const style = { width: 80, colour: false };
    const text = adviceText(
      [
        line({
          blackDeepest: 10.8,
          black: 15.3,
          blackWeakest: 15.3,
          evenOrders: 5.2,
          evenOrdersBest: 5.2,
          evenOrdersWorst: 5.2,
        }),
      ],
      style,
    );
    assert.match(text, /rgb-neutral +none clearly evener +5 +11 to 15 +guess/);
  });
});
