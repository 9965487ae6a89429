import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { blocksNow, otherLines, whyEnded } from '../../../src/report/compare/news';
import { setVerdict } from '../../../src/report/compare/set';
import type { SeverityCounts } from '../../../src/shared/comparison';
import { book, compared, neutral, picture, settings } from '../revisions/support/compared';
import { commit, repositoryOf } from '../revisions/support/repository';

const NONE: SeverityCounts = { errors: 0, warnings: 0, notes: 0 };
const total = ({ errors, warnings, notes }: SeverityCounts) => errors + warnings + notes;

describe('comparing revisions whose settings differ', () => {
  it('reads the unchanged pictures where the settings judge them otherwise: nobody knows else what is new', async () => {
    const top = repositoryOf({ ...settings, ...book(3), 'plates/004.tif': picture('black-only', 4) });
    commit(top, { 'evengrey.json': '{ "process": "offset-coated", "encodings": ["rgb-neutral"] }' });
    const comparison = await compared(top);
    assert.deepEqual([comparison.changes, comparison.scope, comparison.read.length], [[], 'book', 4]);
    assert.equal(comparison.summary.new.errors, 1);
    assert.deepEqual(comparison.settings.changes, [
      { of: 'settings', words: 'encodings from none to rgb-neutral' },
    ]);
    assert.deepEqual(
      comparison.others.map(({ path, findings }) => [path, findings.new.map(({ rule }) => rule)]),
      [['plates/004.tif', ['encoding-not-accepted']]],
    );
  });

  it('tells what unchanged pictures are to be saved as, where a finding that stayed asks for something else', async () => {
    const takes = (encoding: string) => ({
      'evengrey.json': `{ "process": "offset-coated", "encodings": ["${encoding}"] }`,
    });
    const others = { 'a.tif': picture('black-only', 1), 'b.tif': picture('black-only', 2) };
    const top = repositoryOf({ ...takes('rgb-neutral'), ...others, 'c.tif': picture('black-only', 3) });
    fs.renameSync(path.join(top, 'b.tif'), path.join(top, 'd.tif'));
    commit(top, { ...takes('single-channel'), 'c.tif': picture('black-only', 4) });
    const comparison = await compared(top);
    assert.deepEqual(comparison.advice, [
      { target: 'book', before: 'rgb-neutral', after: 'single-channel', pictures: ['a.tif', 'd.tif'] },
    ]);
    assert.match(
      setVerdict(comparison),
      /The advice for a\.tif and d\.tif, unchanged themselves, is another now: save them as single-channel; before, as rgb-neutral\.$/,
    );
  });

  it('reads none of them where the settings only let one in or out, or are written otherwise', async () => {
    const top = repositoryOf({ ...settings, ...book(3) });
    commit(top, {
      'evengrey.json': '{\n  // the same\n  "process": "offset-coated", "ignore": "plates/003.tif" }',
    });
    const comparison = await compared(top);
    assert.deepEqual([comparison.read.length, comparison.unread], [1, 2]);
    assert.deepEqual(comparison.settings, { changes: [], forecasts: [] });
  });

  it('takes what is said of a target for no news because it is called otherwise', async () => {
    const called = (name: string) => ({
      'evengrey.json': `{ "targets": { "${name}": { "process": "silver-halide" } } }`,
    });
    const top = repositoryOf({
      ...called('edition'),
      ...book(3),
      'plates/004.tif': picture('black-only', 4),
    });
    commit(top, called('print'));
    const { summary, others, settings } = await compared(top);
    assert.ok(total(summary.base) > 0);
    assert.deepEqual([summary.new, summary.ended, others], [NONE, NONE, []]);
    assert.deepEqual([summary.unchanged, summary.regraded], [summary.base, 0]);
    assert.deepEqual(
      settings.changes.map(({ words }) => words),
      ['target "edition" is called "print" now'],
    );
  });

  it('takes what only counts for more or less for no news, and tells what is off now as just that', async () => {
    const rules = (level: string) => ({
      'evengrey.json': `{ "process": "offset-coated", "rules": { "mixed-encodings": "${level}" } }`,
    });
    const top = repositoryOf({ ...rules('warning'), ...book(3), 'plates/004.tif': picture('black-only', 4) });
    commit(top, rules('note'));
    const lowered = await compared(top);
    const { summary } = lowered;
    assert.deepEqual([summary.new, summary.ended, lowered.others, lowered.book.new], [NONE, NONE, [], []]);
    assert.deepEqual([summary.base.warnings, summary.unchanged.warnings, summary.regraded], [1, 0, 1]);
    assert.equal(total(summary.base), total(summary.unchanged), 'before + new - ended = now');
    assert.deepEqual(
      lowered.settings.changes.map(({ words }) => words),
      ['mixed-encodings from a warning to a note'],
    );

    commit(top, rules('error'));
    const raised = await compared(top);
    assert.deepEqual([raised.summary.new, raised.summary.ended, raised.others], [NONE, NONE, []]);
    assert.deepEqual([raised.summary.unchanged.errors, raised.summary.regraded], [1, 1]);
    commit(top, { 'plates/004.tif': neutral(4) });
    const mended = await compared(top, { base: 'HEAD~2', whole: true });
    assert.deepEqual(
      mended.changes[0].pages[0].findings.ended.map(({ rule, severity }) => [rule, severity]),
      [['mixed-encodings', 'note']],
      'as it counted then',
    );
    assert.deepEqual([mended.summary.ended.notes, mended.summary.regraded], [1, 0]);

    commit(top, { ...rules('off'), 'plates/004.tif': picture('black-only', 4) });
    const off = await compared(top, { base: 'HEAD~2' });
    assert.deepEqual(off.settings.off, ['mixed-encodings']);
    assert.deepEqual(otherLines(off), ['plates/004.tif: mixed-encodings is off now, was an error']);
    assert.deepEqual(
      blocksNow(off, 'ended').map(block => block.rule + whyEnded(block, off)),
      ['mixed-encodings (its rule is off now)'],
    );
  });

  it('says what another process does to the forecast of what did not change', async () => {
    const top = repositoryOf({ ...settings, ...book(3) });
    commit(top, { 'evengrey.json': '{ "process": "silver-halide" }', 'plates/001.tif': neutral('new') });
    const { settings: told, base, head } = await compared(top);
    assert.ok(told.changes.some(({ words }) => words === 'process from offset-coated to silver-halide'));
    const [{ target, pages, before, after }] = told.forecasts;
    assert.deepEqual([target, pages, head.targets[0].name], ['book', 2, 'book']);
    // of all that was looked at, not of the changed alone
    assert.deepEqual(Object.keys(head.grounds), ['book']);
    assert.ok(base.grounds.book.length && head.grounds.book.length);
    assert.notDeepEqual(base.grounds, head.grounds);
    const seen = async (process: 'offset-coated' | 'silver-halide') => {
      const { changes } = await compared(top, { conditions: { process } });
      return changes[0].pages[0].after!.forecasts[0].tint.seen;
    };
    assert.ok(Math.abs(before - (await seen('offset-coated'))) < 1e-9);
    assert.ok(Math.abs(after - (await seen('silver-halide'))) < 1e-9);
  });

  it('counts greys alone into that forecast: line art and a meant tone have no tint that is to be seen', async () => {
    const told = (process: string) => ({
      'evengrey.json': JSON.stringify({
        process,
        intent: { line: ['plates/001.tif'], toned: ['plates/002.tif'] },
      }),
    });
    const top = repositoryOf({ ...told('offset-coated'), ...book(4) });
    commit(top, told('silver-halide'));
    const { settings: effect } = await compared(top);
    assert.deepEqual(
      effect.forecasts.map(({ pages }) => pages),
      [2],
    );
  });

  it('tells pictures that are the same and stand elsewhere, without reading any', async () => {
    const lines = (...names: string[]) => names.map(name => `![plate](plates/${name}.tif)\n`).join('\n');
    const top = repositoryOf({ ...settings, ...book(4), 'book.md': lines('001', '002', '003', '004') });
    commit(top, { 'book.md': lines('004', '001', '002', '003') });
    const { rearranged, changes, read } = await compared(top);
    assert.deepEqual([changes, read], [[], []]);
    assert.deepEqual(
      rearranged.map(({ path, before, after }) => [path, before.after, after.after]),
      [['plates/004.tif', 'plates/003.tif', null]],
    );
  });
});
