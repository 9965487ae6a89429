import assert from 'node:assert/strict';
import { textOf } from '../../../../src/remedy/metadata/source/text';

describe('textOf', () => {
  it('takes UTF-8 where it can be, else Latin-1, without zero bytes at the end', () => {
    assert.equal(textOf(Buffer.from('Grüße\0\0')), 'Grüße');
    assert.equal(textOf(Buffer.from('Grüße', 'latin1')), 'Grüße');
    assert.equal(textOf(Buffer.alloc(0)), '');
  });
});
