import assert from 'node:assert/strict';
import { askedByBook, convertedBy } from '../../../src/editor/checker/asked-by-book';
import { finding, picture } from '../../report/text/support';

const split = {
  ...finding('mixed-encodings', 'warning', 'They are unlikely to match.'),
  data: { groups: [], convert: ['a.tif', 'c.tif'], save: 'rgb-neutral' },
};
const pictures = [
  picture('a.tif', [], { encoding: 'single-channel' }),
  picture('b.tif'),
  picture('c.tif', [], { encoding: 'black-only' }),
  picture('c.tif', [], { encoding: 'black-only', page: 2 }),
];
const fix = () => ({ fix: 'rgb-neutral' as const, fixAs: 'PNG' });

describe('what a finding about the book asks of its pictures', () => {
  it('is asked of those that are to be converted, each file once', () => {
    assert.deepEqual(convertedBy(split, pictures), ['a.tif', 'c.tif']);
    assert.deepEqual(convertedBy({ ...split, severity: 'note' }, pictures), []);
    const profiles = { ...finding('untagged', 'warning', ''), data: { pictures: ['a.tif'] } };
    assert.deepEqual(convertedBy(profiles, pictures), [], 'it asks for something else');
  });

  it('is told of each by how it is stored, for knowing, with the way out where there is one', () => {
    const asked = askedByBook([split], pictures, fix);
    assert.deepEqual([...asked.keys()], ['a.tif', 'c.tif']);
    const [one] = asked.get('a.tif')!;
    assert.match(one.message, /^It is stored as one grey channel, .* Save it as rgb-neutral\.$/);
    assert.deepEqual(
      [one.rule, one.severity, one.fix, one.fixAs],
      ['mixed-encodings', 'note', 'rgb-neutral', 'PNG'],
    );
    assert.equal(asked.get('c.tif')![0].fix, null, 'it has several pages');
  });
});
