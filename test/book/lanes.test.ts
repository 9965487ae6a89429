import assert from 'node:assert/strict';
import { setTimeout as wait } from 'node:timers/promises';
import { breather, inLanes } from '../../src/book/lanes';

describe('lanes', () => {
  it('keep the order and the number at work', async () => {
    let atWork = 0;
    let most = 0;
    const results = await inLanes([30, 10, 20, 5, 0], 2, async ms => {
      most = Math.max(most, ++atWork);
      await wait(ms);
      atWork--;
      return ms;
    });
    assert.deepEqual(results, [30, 10, 20, 5, 0]);
    assert.equal(most, 2);
  });

  it('end with the first failure and begin nothing after it', async () => {
    const begun: number[] = [];
    const work = async (n: number) => {
      begun.push(n);
      await wait(1);
      if (n === 1) throw new Error('one');
    };
    await assert.rejects(inLanes([1, 2, 3, 4, 5, 6], 1, work), /one/);
    assert.deepEqual(begun, [1]);
  });

  it('wait for what is at work when one of them fails', async () => {
    let ended = false;
    const work = async (ms: number) => {
      await wait(ms);
      if (ms === 1) throw new Error('one');
      ended = true;
    };
    await assert.rejects(inLanes([1, 30], 2, work), /one/);
    assert.ok(ended);
  });

  it('a breather lets others in between', async () => {
    let others = 0;
    const timer = setInterval(() => others++, 1);
    const breathe = breather(2);
    const end = performance.now() + 60;
    while (performance.now() < end) await breathe();
    clearInterval(timer);
    assert.ok(others > 0);
  });
});
