import assert from 'node:assert/strict';
import {
  carriedResources,
  IPTC,
  readResources,
  resourceBytes,
  withIptc,
} from '../../../src/remedy/metadata/resources';

const resource = (id: number, data: string, name = '') => ({
  id,
  name: Buffer.from(name),
  data: Buffer.from(data),
});

describe('image resources', () => {
  it('are read as they are written, odd lengths and names too', () => {
    const list = [resource(0x040b, 'odd'), resource(0x07d0, 'even', 'path'), resource(0x07d1, '', 'odd')];
    const bytes = resourceBytes(list);
    assert.equal(bytes.length % 2, 0);
    assert.deepEqual(readResources(bytes), { resources: list, whole: true });
    assert.equal(readResources(Buffer.concat([bytes, Buffer.alloc(3)])).whole, true);
  });

  it('are read up to where they are damaged', () => {
    const bytes = resourceBytes([resource(0x040b, 'odd'), resource(0x07d0, 'even')]);
    for (const cut of [bytes.length - 1, bytes.length - 5, bytes.length - 9]) {
      const { resources, whole } = readResources(bytes.subarray(0, cut));
      assert.deepEqual([resources.map(({ id }) => id), whole], [[0x040b], false]);
    }
    assert.deepEqual(readResources(Buffer.from('no resources')), { resources: [], whole: false });
    assert.deepEqual(readResources(Buffer.alloc(0)), { resources: [], whole: true });
  });

  it('go along but for IPTC, which goes by itself, previews and what is of the old colours', () => {
    const list = [IPTC, 0x03ed, 0x040c, 0x040f, 0x040b].map(id => resource(id, 'x'));
    assert.deepEqual(carriedResources(list), [resource(0x040b, 'x')]);
    assert.deepEqual(
      withIptc(Buffer.from('iptc'), [resource(0x040b, 'x')]).map(({ id }) => id),
      [IPTC, 0x040b],
    );
    assert.deepEqual(withIptc(null, []), []);
  });
});
