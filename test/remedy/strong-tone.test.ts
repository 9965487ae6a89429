import assert from 'node:assert/strict';
import type { Asked, Decision } from '../../src/remedy/plan/types';
import { losingStrongTone, strongToneNotice } from '../../src/remedy/strong-tone';
import type { PictureFacts } from '../../src/shared/picture';
import { greyFacts } from '../book/support/facts';
import { askedFor, wishFor } from './support';

const unstated = { intent: 'grey', intentStated: false } as const;

function toned(
  path: string,
  mean: number,
  change: Partial<Asked> = unstated,
  encoding = 'rgb-toned',
): Decision {
  const chroma = { ...greyFacts('').chroma!, mean };
  const facts = { encoding: encoding as PictureFacts['encoding'], chroma };
  const asked = askedFor(path, change, facts);
  return { asked, do: 'convert', order: {} as never };
}

describe('pictures whose strong tone goes', () => {
  it('are named, with what is lost and how it is kept', () => {
    const all = [toned('a.jpg', 41.2), toned('b.jpg', 37.8), toned('c.jpg', 1.4)];
    assert.equal(
      strongToneNotice(losingStrongTone(all, wishFor()), true),
      '2 pictures carry a strong tone, of a mean chroma of 38 to 41, which would be gone from the result: a.jpg and b.jpg. If it is meant, as a sepia toning is, list them under "intent", "toned", in evengrey.json, and they stay as they are; or keep what is stronger than a chroma of your choice with "--below".',
    );
    assert.match(
      strongToneNotice(losingStrongTone(all.slice(0, 1), wishFor({ to: 'black-only' })), false)!,
      /^1 picture carries a strong tone, of a mean chroma of 41, which is gone from the result: a\.jpg\. If .* list it /,
    );
  });

  it('are not those that are to be grey, keep their tone, or are not converted', () => {
    const told = (decision: Decision, change = {}) =>
      strongToneNotice(losingStrongTone([decision], wishFor(change)), false);
    assert.equal(told(toned('a.jpg', 40, { intent: 'grey', intentStated: true })), null);
    assert.equal(told(toned('a.jpg', 40, unstated, 'colour')), null);
    assert.equal(told(toned('a.jpg', 40), { to: 'rgb-toned' }), null);
    assert.equal(told(toned('a.jpg', 40), { below: 20 }), null);
    assert.notEqual(told(toned('a.jpg', 10), { below: 20 }), null);
    assert.equal(told({ ...toned('a.jpg', 40), do: 'skip', reason: 'It was converted so before.' }), null);
  });
});
