import assert from 'node:assert/strict';
import { rehearse } from '../../src/picture/rehearse';

describe('rehearsal', () => {
  it('reads a picture of no disk through the whole pass, as pictures of a book go', async () => {
    const [facts, ...more] = await rehearse();
    assert.deepEqual(more, []);
    assert.equal(facts.unreadable, null);
    assert.equal(facts.format, 'jpeg');
    assert.equal(facts.encoding, 'rgb-neutral');
    assert.ok(facts.tone);
  });
});
