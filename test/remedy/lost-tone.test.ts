import assert from 'node:assert/strict';
import { lostToneNotices, lostTones } from '../../src/remedy/lost-tone';
import type { Asked, Decision } from '../../src/remedy/plan/types';
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

const noticesOf = (decisions: Decision[], wish = {}, dryRun = false): string[] =>
  lostToneNotices(lostTones(decisions, wishFor(wish)), dryRun);

describe('pictures whose strong tone goes', () => {
  it('are named, with what is lost and how it is kept', () => {
    const all = [toned('a.jpg', 41.2), toned('b.jpg', 37.8)];
    assert.deepEqual(noticesOf(all, {}, true), [
      '2 pictures carry a strong tone, of a mean chroma of 38 to 41, which would be gone from the result: a.jpg and b.jpg. If it is meant, as a sepia toning is, list them under "intent", "toned", in evengrey.json, and they stay as they are; or keep what is stronger than a chroma of your choice with "--below".',
    ]);
    assert.match(
      noticesOf(all.slice(0, 1), { to: 'black-only' })[0],
      /^1 picture carries a strong tone, of a mean chroma of 41, which is gone from the result: a\.jpg\. If .* list it /,
    );
  });

  it('are not those that are to be grey, keep their tone, or are not converted', () => {
    const told = (decision: Decision, change = {}) => noticesOf([decision], change).length;
    assert.equal(told(toned('a.jpg', 40, { intent: 'grey', intentStated: true })), 0);
    assert.equal(told(toned('a.jpg', 40, unstated, 'colour')), 0);
    assert.equal(told(toned('a.jpg', 40), { to: 'rgb-toned' }), 0);
    assert.equal(told(toned('a.jpg', 40), { below: 20 }), 0);
    assert.equal(told(toned('a.jpg', 10), { below: 20 }), 1);
    assert.equal(told({ ...toned('a.jpg', 40), do: 'skip', reason: 'It was converted so before.' }), 0);
  });
});

describe('pictures whose faint tone goes', () => {
  const found = { ...unstated, meant: false };

  it('are named apart from those of a strong one, with what it is taken for and how it is kept', () => {
    const all = [toned('a.jpg', 41.2, found), toned('b.jpg', 1.6, found), toned('c.jpg', 6.2, found)];
    const [strong, faint] = noticesOf(all, {}, true);
    assert.match(strong, /^1 picture carries a strong tone, .*: a\.jpg\./);
    assert.equal(
      faint,
      '2 pictures carry a faint tone, of a mean chroma of 2 to 6, which would be gone from the result: b.jpg and c.jpg. It is taken for what a scanner or a conversion left over. If it is meant, as a faint toning is, list them under "intent", "toned", in evengrey.json, and they stay as they are.',
    );
    assert.match(
      noticesOf(all.slice(2))[0],
      /chroma of 6, which is gone from the result: c\.jpg\. .* list it /,
    );
  });

  it('are not those that were named themselves, of which something was said, or whose strength was', () => {
    const told = (change: Partial<Asked>, wish = {}) => noticesOf([toned('a.jpg', 4, change)], wish).length;
    assert.equal(told(found), 1);
    assert.equal(told({ ...found, meant: true }), 0);
    assert.equal(told({ ...found, intent: 'grey', intentStated: true }), 0);
    assert.equal(told(found, { below: 20 }), 0);
    assert.equal(told(found, { to: 'rgb-toned' }), 0);
    assert.equal(noticesOf([toned('a.jpg', 4, found, 'rgb-residual')]).length, 0);
  });
});
