import assert from 'node:assert/strict';
import { line, spans, textAt } from '../../../src/book/cache/lines';

describe('lines of the cache', () => {
  it('come back as they were written, torn ones as nothing', () => {
    const bytes = Buffer.from(`${line('eins')}\n${line('zwei ä')}${line('drei').slice(0, -3)}`);
    assert.deepEqual(
      [...spans(bytes)].map(span => textAt(bytes, span)),
      ['eins', 'zwei ä', null],
    );
  });
});
