import assert from 'node:assert/strict';
import { recordIn } from '../../../src/picture/xmp/record';
import { withRecord } from '../../../src/remedy/metadata';
import { bare } from '../file/stored';

const RECORD = { from: 'ab'.repeat(32), to: 'rgb-toned', toned: true, fitted: false } as const;

describe('withRecord', () => {
  it('adds the record to a packet, or makes one; no time, so that it is the same again', () => {
    const rdf =
      '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:a="u" a:b="stays"/></rdf:RDF>';
    for (const xmp of [null, rdf]) {
      const made = withRecord(bare({ xmp }), { ...RECORD, parameters: 'words' });
      assert.deepEqual(recordIn(Buffer.from(made.xmp!)), RECORD);
      assert.equal(/a:b="stays"/.test(made.xmp!), xmp !== null);
      assert.deepEqual(withRecord(bare({ xmp }), { ...RECORD, parameters: 'words' }), made);
    }
  });
});
