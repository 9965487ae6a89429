import assert from 'node:assert/strict';
import { facingDrawings } from '../../../src/report/sheet/facing';
import { picture, target } from '../text/support';

describe('a picture as it is drawn beside another', () => {
  it('is drawn in the same orders as one that prints alike', () => {
    const [one] = facingDrawings(picture('a.png'), [target.name]);
    const [other] = facingDrawings(picture('b.png'), [target.name]);
    assert.ok(one!.length > 1);
    assert.deepEqual(one, other);
    assert.notDeepEqual(one![0], one![1]);
  });

  it('is drawn by the target of that name, or not at all', () => {
    const [known, none] = facingDrawings(picture('a.png'), [target.name, 'another']);
    assert.ok(known);
    assert.equal(none, null);
    assert.deepEqual(facingDrawings({ ...picture('a.png'), intent: 'line' }, [target.name]), [null]);
  });
});
