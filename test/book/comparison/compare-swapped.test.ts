import assert from 'node:assert/strict';
import { compared, neutral, picture, settings } from '../revisions/support/compared';
import { commit, repositoryOf } from '../revisions/support/repository';

const four = {
  'a.tif': neutral(1),
  'b.tif': picture('black-only', 2),
  'c.tif': neutral(3),
  'd.tif': neutral(4),
};

describe('pictures that took each other\u2019s names', () => {
  it('are renamed and unchanged, whether two or more of them, and each is read once', async () => {
    const top = repositoryOf({ ...settings, ...four });
    commit(top, { 'a.tif': four['b.tif'], 'b.tif': four['a.tif'] });
    const two = await compared(top, { whole: true });
    assert.deepEqual(
      two.changes.map(({ kind, path, from, swapped }) => [kind, path, from, swapped]),
      [
        ['renamed', 'a.tif', 'b.tif', true],
        ['renamed', 'b.tif', 'a.tif', true],
      ],
    );
    assert.equal(two.read.length, 4);
    assert.ok(
      two.changes.every(({ pages }) =>
        pages.every(({ before, after }) => before!.facts.sha256 === after!.facts.sha256),
      ),
    );
    assert.deepEqual(
      [two.summary.new.warnings, two.summary.ended.warnings],
      [0, 0],
      'nothing prints otherwise',
    );

    commit(top, { 'a.tif': four['c.tif'], 'b.tif': four['b.tif'], 'c.tif': four['a.tif'] });
    const ring = (await compared(top)).changes;
    assert.deepEqual(
      ring.map(({ kind, path, from }) => [kind, path, from]),
      [
        ['renamed', 'a.tif', 'c.tif'],
        ['renamed', 'b.tif', 'a.tif'],
        ['renamed', 'c.tif', 'b.tif'],
      ],
    );
  });

  it('are changed where one of their contents is gone, so that it is told', async () => {
    const top = repositoryOf({ ...settings, ...four });
    commit(top, { 'a.tif': four['b.tif'], 'b.tif': neutral('new') });
    const { changes } = await compared(top);
    assert.deepEqual(
      changes.map(({ kind, path }) => [kind, path]),
      [
        ['changed', 'a.tif'],
        ['changed', 'b.tif'],
      ],
    );
  });
});
