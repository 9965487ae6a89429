import assert from 'node:assert/strict';
import { concerns } from '../../../src/report/sheet/shared';
import { finding, picture, target } from '../text/support';

describe('findings about the book on a picture’s sheet', () => {
  const of = picture('a/b.png');
  const about = (data: Record<string, unknown>) => concerns({ ...finding('x', 'note', ''), data }, of);

  it('are left out where they are about another target', () => {
    assert.ok(about({ target: target.name, pictures: 4 }));
    assert.ok(!about({ target: 'another' }));
  });

  it('are left out where they name other pictures', () => {
    assert.ok(about({ groups: [{ pictures: ['c.png'] }, { pictures: ['a/b.png'] }] }));
    assert.ok(!about({ groups: [{ pictures: ['c.png'] }] }));
    assert.ok(!about({ pictures: ['c.png'] }));
    assert.ok(!about({ counted: ['c.png'] }));
    assert.ok(about({ counted: ['a/b.png'] }));
  });

  it('are told where they name nothing', () => {
    assert.ok(about({}));
  });
});
