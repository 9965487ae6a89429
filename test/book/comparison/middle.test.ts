import assert from 'node:assert/strict';
import { middlesOf } from '../../../src/book/comparison/middle';
import { tintAt } from '../../../src/print/apart';
import { picture, pictures, target } from '../../rules/support/pictures';

const targets = [target('offset-coated', { route: 'separated' })];
const [{ name }] = targets;
const neutral = pictures(5, 'rgb-neutral', { targets });
const warm = pictures(3, 'rgb-toned', { targets, tone: [4, 8] });

describe('the middle that a picture is held against', () => {
  const bAt50 = (tints: ReturnType<ReturnType<typeof middlesOf>>) => tintAt(tints!, 50)!.b;

  it('is that of the many, for sound and odd ones alike', () => {
    const middle = middlesOf([...warm, ...neutral]);
    assert.ok(Math.abs(bAt50(middle(neutral[0], name)) - bAt50(middle(warm[0], name))) < 1e-9);
    assert.ok(Math.abs(bAt50(middle(neutral[0], name)) - bAt50(middlesOf(neutral)(neutral[0], name))) < 1e-9);
  });

  it('is that of its like where none has the majority, and never its own alone', () => {
    const middle = middlesOf([...warm, ...neutral.slice(0, 3)]);
    assert.ok(bAt50(middle(warm[0], name)) - bAt50(middle(neutral[0], name)) > 4);
    const [one] = neutral;
    assert.ok(bAt50(middlesOf([one, warm[0]])(one, name)) - bAt50(middlesOf(neutral)(one, name)) > 4);
    assert.equal(middlesOf([one])(one, name), null);
    assert.equal(middlesOf([one, ...warm])(one, 'elsewhere'), null);
    assert.equal(middlesOf([one, picture('bilevel', { targets })])(one, name), null);
  });
});
