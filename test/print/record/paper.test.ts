import assert from 'node:assert/strict';
import { paperOf } from '../../../src/print/papers';
import { readPaper } from '../../../src/print/record/paper';

const record = {
  process: 'silver-halide' as const,
  paper: [92, 1, 0] as [number, number, number],
  date: '2026-03-01',
  readings: [],
};

describe('paper of a record', () => {
  it('replaces the white of its kind, and keeps what else is known of it', () => {
    const paper = readPaper(paperOf('photo-lustre'), record);
    assert.deepEqual([paper.id, paper.white, paper.brightener], ['photo-lustre', [92, 1, 0], 'faint']);
    assert.match(paper.ground, /2026-03-01/);
  });
  it('gives way to the user’s own measurement, and to nothing read', () => {
    const own = paperOf({ lab: [90, 0, 3] });
    assert.equal(readPaper(own, record), own);
    const kind = paperOf('photo-lustre');
    assert.equal(readPaper(kind, null), kind);
    assert.equal(readPaper(kind, { ...record, paper: null }), kind);
  });
});
