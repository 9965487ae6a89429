import assert from 'node:assert/strict';
import type { Print } from '../../../src/rules/likely-tint/prints';
import { questionOf } from '../../../src/rules/likely-tint/question';

/** Pictures of which a tint is seen so often (0-1) by each way of the print house. */
const print = (ways: Record<string, number>) =>
  ({
    forecast: { routes: Object.entries(ways).map(([label, seen]) => ({ label, tint: { seen } })) },
  }) as unknown as Print;

describe('what to ask the print house', () => {
  it('is which way it takes, where the best and the worst are more than 4 orders of 10 apart', () =>
    assert.equal(
      questionOf([print({ kept: 0.1, separated: 0.8 }), print({ kept: 0.3, separated: 0.6 })]),
      'It depends on what the print house does with such files: a tint is seen in about 2 orders of 10 by one way (kept), in about 7 orders of 10 by another (separated). Ask which it takes.',
    ));
  it('is nothing where they are not, and where only one is known', () => {
    assert.equal(questionOf([print({ kept: 0.3, separated: 0.6 })]), null);
    assert.equal(questionOf([{ forecast: {} } as unknown as Print]), null);
  });
});
