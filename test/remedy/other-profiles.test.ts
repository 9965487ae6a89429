import assert from 'node:assert/strict';
import { otherProfilesNotice } from '../../src/remedy/other-profiles';
import type { Decision } from '../../src/remedy/plan/types';
import { askedFor, wishFor } from './support';

const profile = { description: 'Gamma 2.2', class: 'display', space: 'grey' as const, greyAxisChroma: 0 };
const facts = { encoding: 'single-channel' as const, space: 'grey' as const };
const order = {} as never;
const wish = wishFor({ to: 'single-channel' });

const decision = (what: 'convert' | 'copy', description: string | null): Decision => ({
  asked: askedFor(
    'a.tif',
    {},
    { ...facts, profile: description === null ? null : { ...profile, description } },
  ),
  ...{ do: what, order },
});

describe('profiles of a set that is made', () => {
  it('are told where copies carry others than the results, and how to have one', () => {
    const made = decision('convert', null);
    const told = otherProfilesNotice([made, decision('copy', 'Gamma 2.2')], wish);
    assert.match(
      told!,
      /^1 picture was copied in the profile that it had \(Gamma 2\.2\).*carry Grey, tone curve.*--profile/,
    );
  });

  it('are not told where they are alike, nobody can read any, or nothing is made', () => {
    const made = decision('convert', null);
    for (const copy of [decision('copy', 'Grey, tone curve of sRGB'), decision('copy', null)])
      assert.equal(otherProfilesNotice([made, copy], wish), null);
    assert.equal(otherProfilesNotice([decision('copy', 'Gamma 2.2')], wish), null);
    assert.equal(
      otherProfilesNotice([made, decision('copy', 'Gamma 2.2')], wishFor({ to: 'black-only' })),
      null,
    );
  });
});
