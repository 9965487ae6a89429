import assert from 'node:assert/strict';
import { otherThanAsked, withColourKept } from '../../src/report/otherwise';
import type { Encoding } from '../../src/shared/picture';
import { report } from './text/conversions';

const [made] = report.conversions;
const found = (encoding: Encoding) => ({ ...made, proof: { ...made.proof!, encoding } });
const sorted = (below: number | null, ...encodings: Encoding[]) => {
  const conversions = [made, report.conversions[2], ...encodings.map(found)];
  const of = (some: typeof conversions) => some.map(({ proof }) => proof!.encoding);
  const results = { conversions, below };
  return { otherwise: of(otherThanAsked(results)), kept: of(withColourKept(results)) };
};

describe('results that are of another encoding', () => {
  it('are what nobody asked for', () => {
    assert.deepEqual(sorted(null, 'rgb-residual', 'single-channel'), {
      otherwise: ['rgb-residual', 'single-channel'],
      kept: [],
    });
  });
  it('are as asked where colour was to stay and is there, and only then', () => {
    assert.deepEqual(
      sorted(
        6,
        'colour',
        'rgb-toned',
        'rgb-residual',
        'single-channel',
        'bilevel',
        'four-channel',
        'unreadable',
      ),
      {
        otherwise: ['single-channel', 'bilevel', 'four-channel', 'unreadable'],
        kept: ['colour', 'rgb-toned', 'rgb-residual'],
      },
    );
  });
});
