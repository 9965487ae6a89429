import assert from 'node:assert/strict';
import { lasts } from '../../src/book/lasting';
import { brokenFacts, greyFacts } from './support/facts';

describe('what was read', () => {
  it('lasts where a picture was read, or where its content is what cannot be read', () => {
    assert.equal(lasts([greyFacts('a')]), true);
    for (const reason of ['empty', 'truncated', 'corrupt', 'too-large', 'format', 'not-fetched'] as const)
      assert.equal(lasts([brokenFacts(reason)]), true, reason);
  });

  it('does not where another try may end otherwise, be it with one page of many', () => {
    for (const reason of ['missing', 'timeout', 'crashed', 'permission', 'outside', 'not-a-file'] as const)
      assert.equal(lasts([greyFacts('a'), brokenFacts(reason)]), false, reason);
  });
});
