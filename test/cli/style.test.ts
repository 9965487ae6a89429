import assert from 'node:assert/strict';
import { styleOf } from '../../src/cli/style';

const on = (env: Record<string, string>, isTTY = true, output?: string) =>
  styleOf(output, { env, stdout: { isTTY, columns: 90 } } as never);

describe('colour', () => {
  it('is for terminals, and for those who force it', () => {
    assert.equal(on({}).colour, true);
    assert.equal(on({}, false).colour, false);
    assert.equal(on({ FORCE_COLOR: '1' }, false).colour, true);
  });
  it('is never there against NO_COLOR, on a dumb terminal or in a file', () => {
    assert.equal(on({ NO_COLOR: '1', FORCE_COLOR: '1' }).colour, false);
    assert.equal(on({ TERM: 'dumb' }).colour, false);
    const file = on({}, true, 'report.txt');
    assert.deepEqual([file.colour, file.width], [false, 80]);
  });
});
