import assert from 'node:assert/strict';
import { type Naming, newSlips } from '../../../src/book/revisions/new-slips';
import { noSettings } from '../../../src/book/settings/settings';

const naming = (spreads: string[][], pictures: string[], text = JSON.stringify({ spreads })): Naming => ({
  settings: { ...noSettings, spreads, written: { file: 'evengrey.json', text } },
  pictures,
  notInBook: [],
});
const told = (before: Naming | null, now: Naming) => newSlips(before, now).map(({ message }) => message);
const SPREADS = [['a.tif', 'b.tif']];
const LOST = 'A spread names "b.tif", and nothing matches it.';

describe('what the settings say in vain since', () => {
  it('is a name whose picture went, and one that came in vain', () => {
    const both = naming(SPREADS, ['a.tif', 'b.tif']);
    assert.deepEqual(told(both, naming(SPREADS, ['a.tif'])), [LOST]);
    assert.deepEqual(told(naming([], ['a.tif']), naming(SPREADS, ['a.tif'])), [LOST]);
    assert.deepEqual(told(both, both), []);
  });

  it('is not what was said in vain before, though its line moved', () => {
    const before = naming(SPREADS, ['a.tif']);
    const moved = naming(SPREADS, ['a.tif'], `\n\n${JSON.stringify({ spreads: SPREADS })}`);
    assert.deepEqual(told(before, moved), []);
    assert.deepEqual(told(null, moved), [LOST], 'unless nobody could use the settings then');
  });
});
