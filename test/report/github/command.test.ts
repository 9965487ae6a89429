import assert from 'node:assert/strict';
import { command } from '../../../src/report/github/command';
import { AWKWARD } from '../awkward';
import { readCommand } from './support';

describe('a workflow command', () => {
  it('is read back by the runner as it was meant, on one line', () => {
    for (const text of [AWKWARD, '100%0A', '%25', 'a::b', '::error::x', '\n\r\n']) {
      const written = command('error', { file: text, line: 1, title: 'x' }, text);
      assert.match(written, /^[^\r\n]*$/);
      assert.deepEqual(readCommand(written), {
        name: 'error',
        properties: { file: text, line: '1', title: 'x' },
        data: text,
      });
    }
  });

  it('leaves out what there is not', () => {
    assert.equal(command('notice', { file: null, title: 'x' }, 'y'), '::notice title=x::y');
  });
});
