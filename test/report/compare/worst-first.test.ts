import assert from 'node:assert/strict';
import { worstFirst } from '../../../src/report/compare/worst-first';
import type { ChangeKind, FindingChanges } from '../../../src/shared/comparison';
import { brokenFacts } from '../../book/support/facts';
import { finding, picture } from '../text/support';
import { change, findings, page } from './support';

const [error, warning, note] = (['error', 'warning', 'note'] as const).map(severity =>
  finding(`a-${severity}`, severity, ''),
);
const of = (path: string, told: Partial<FindingChanges>, kind: ChangeKind = 'changed') =>
  change(kind, path, [page(picture(path), picture(path), { findings: findings(told) })]);
const order = (...changes: Parameters<typeof worstFirst>[0]) =>
  worstFirst(changes).map(each => each.change.path);

describe('changed pictures, worst first', () => {
  it('begin with new errors, by how many, and the warnings beside them', () => {
    assert.deepEqual(
      order(
        of('warnings', { new: [warning, warning, warning] }),
        of('error', { new: [error] }),
        of('both', { new: [error, warning] }),
        of('errors', { new: [error, error] }),
      ),
      ['errors', 'both', 'error', 'warnings'],
    );
  });

  it('begin before all with what cannot be printed, whatever the settings make of it', () => {
    const broken = picture('broken', [], brokenFacts('truncated'));
    assert.deepEqual(
      order(
        of('warning', { new: [warning] }),
        change('changed', 'broken', [page(picture('broken'), broken)]),
        of('errors', { new: [error, error] }),
        change('added', 'blank', [page(null, picture('blank', [], brokenFacts('missing')))]),
      ),
      ['broken', 'blank', 'errors', 'warning'],
    );
  });

  it('go on with what stays, and end with what nothing speaks against, whatever ended', () => {
    assert.deepEqual(
      order(
        of('clean', { new: [note], unchanged: [note] }),
        of('better', { ended: [error] }),
        of('stays', { unchanged: [error] }),
        of('mended in part', { ended: [error], unchanged: [warning] }),
        of('gone', {}, 'deleted'),
        of('new', { new: [warning] }),
        of('clean too', {}),
      ),
      ['new', 'stays', 'mended in part', 'gone', 'better', 'clean', 'clean too'],
    );
  });

  it('have what is waived behind what stays, and before what nothing speaks against', () => {
    const waived = change('added', 'waived', [page(null, picture('waived'), { waived: [warning] })]);
    const off = of('off', { ended: [warning] });
    const rules = [warning.rule];
    assert.deepEqual(
      worstFirst([of('clean', {}), off, waived, of('stays', { unchanged: [warning] })], rules).map(
        ({ change: { path } }) => path,
      ),
      ['stays', 'waived', 'clean', 'off'],
      'a rule that is off makes no picture better',
    );
  });

  it('have behind all others those of which no pixel changed', () => {
    const same = change('changed', 'same', [page(picture('same'), picture('same'), { samePixels: true })]);
    const half = change('changed', 'half', [
      page(picture('half'), picture('half'), { samePixels: true }),
      page(picture('half'), picture('half'), { samePixels: false }),
    ]);
    const all = [same, of('mode', {}, 'mode'), half, of('other', {})];
    assert.deepEqual(order(...all), ['half', 'other', 'same', 'mode']);
  });

  it('are told by what is new, else by what stays', () => {
    const [first, second] = worstFirst([
      of('a', { unchanged: [warning, error] }),
      of('b', { new: [warning], unchanged: [error] }),
    ]);
    assert.deepEqual([first.at, first.against], [1, [warning]]);
    assert.deepEqual([second.at, second.against], [0, [error, warning]]);
  });
});
