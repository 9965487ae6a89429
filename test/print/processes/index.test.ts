import assert from 'node:assert/strict';
import { papers } from '../../../src/print/papers';
import { processes, processOf } from '../../../src/print/processes';

describe('processes', () => {
  it('are the seven, each on a known paper, with its sources and its guesses', () => {
    assert.deepEqual(
      processes.map(({ id }) => id).sort(),
      'dry-toner dye-transfer inkjet liquid-toner offset-coated offset-uncoated silver-halide'.split(' '),
    );
    for (const process of processes) {
      assert.ok(
        papers.some(({ id }) => id === process.paper),
        process.id,
      );
      assert.ok(process.sources.length > 0 && process.guesses.length > 0, process.id);
      assert.ok(process.screen.length > 10 && process.usable[0] < process.usable[1], process.id);
      assert.equal(process.inkLimit === null, process.signal === 'rgb', process.id);
    }
  });
  it('without data of their own are called generic', () => {
    assert.deepEqual(
      processes.filter(({ basis }) => basis === 'data').map(({ id }) => id),
      ['liquid-toner', 'offset-coated', 'offset-uncoated'],
    );
  });
  it('that are not known are refused with the list', () =>
    assert.throws(
      () => processOf('letterpress' as never),
      /no process "letterpress"; known are silver-halide/,
    ));
});
