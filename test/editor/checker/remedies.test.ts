import assert from 'node:assert/strict';
import { recommendedFor } from '../../../src/editor/checker/remedies';
import type { Recommendation } from '../../../src/rules/recommended';
import type { PictureReport } from '../../../src/shared/finding';
import { picture, target } from '../../rules/support/pictures';

const reportOn = (targets = [target('offset-coated')]): PictureReport => ({
  ...picture('four-channel', { targets }),
  findings: [],
});
const whyOf = (why: Recommendation['why'], known = reportOn()) =>
  recommendedFor({ picture: known, recommendation: { encoding: 'single-channel', why } }).why;

describe('the reason that is given for what to save as', () => {
  it('speaks of a forecast where there is one', () => {
    for (const why of ['even', 'range', 'frequent'] as const) assert.match(whyOf(why), /by the forecast/);
    assert.doesNotMatch(whyOf('majority'), /forecast/);
    assert.match(whyOf('frequent', reportOn([])), /nothing is forecast/);
    assert.doesNotMatch(whyOf('frequent', reportOn([])), /by the forecast/);
  });
  it('calls no encoding that is in a tie better than all others', () => {
    for (const why of ['even', 'range', 'frequent'] as const)
      assert.match(whyOf(why), /no other prints clearly less often/);
  });
});
