import assert from 'node:assert/strict';
import { crc32 } from '../../../src/remedy/file/crc';

describe('crc32', () => {
  it('is that of the check value', () => {
    // ITU-T V.42 / ISO 3309: the common check value of "123456789"
    assert.equal(crc32(Buffer.from('123456789')), 0xcbf43926);
    assert.equal(crc32(Buffer.alloc(0)), 0);
    // the chunk that ends every PNG: 00000000 49454E44 AE426082
    assert.equal(crc32(Buffer.from('IEND')), 0xae426082);
  });
});
