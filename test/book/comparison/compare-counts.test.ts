import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { checkBook } from '../../../src/book/check';
import { loadSettings } from '../../../src/book/settings/load';
import { waiveAll } from '../../../src/book/waivers/apply';
import { WAIVERS_FILE } from '../../../src/book/waivers/file';
import { blocksNow, namesOf } from '../../../src/report/compare/news';
import { setVerdict } from '../../../src/report/compare/set';
import { closing } from '../../../src/report/compare/words';
import type { Comparison } from '../../../src/shared/comparison';
import { compared, neutral, picture, pointer, pool, rulesOf, settings } from '../revisions/support/compared';
import { commit, git, repositoryOf } from '../revisions/support/repository';

/** What a check of the folder counts, which holds the head. */
async function checked(root: string) {
  const { settings: read } = await loadSettings(root);
  return checkBook({ root, paths: [root], settings: read!, pool: pool(), cache: null });
}

const summed = ({ summary: { new: fresh, unchanged } }: Comparison) => ({
  errors: fresh.errors + unchanged.errors,
  warnings: fresh.warnings + unchanged.warnings,
  notes: fresh.notes + unchanged.notes,
});
const counted = ({ summary: { errors, warnings, notes } }: Awaited<ReturnType<typeof checked>>) => ({
  ...{ errors, warnings, notes },
});
const strict = { 'evengrey.json': '{ "process": "offset-coated", "rules": { "mixed-encodings": "error" } }' };
const verdicts = ({ changes }: Comparison) =>
  changes.map(({ path, pages }) => [path, ...pages.flatMap(({ matches }) => matches.map(m => m.verdict))]);

describe('what a comparison counts', () => {
  it('is what a check of the head counts: also what stays on pictures that did not change', async () => {
    const top = repositoryOf({
      ...settings,
      'p1.tif': neutral(1),
      'p2.tif': neutral(2),
      'lost.tif': pointer('1'),
    });
    commit(top, { 'p1.tif': picture('black-only', 1) });
    const comparison = await compared(top, { whole: true });
    assert.equal(comparison.summary.unchanged.errors, 1, 'the picture that is not fetched');
    assert.deepEqual(summed(comparison), counted(await checked(top)));
  });

  it('is one where one finding about the book is said of several pictures', async () => {
    const top = repositoryOf({
      ...strict,
      ...Object.fromEntries([1, 2, 3, 4, 5, 6].map(i => [`p${i}.tif`, neutral(i)])),
    });
    commit(top, {
      'p1.tif': picture('black-only', 1),
      'p2.tif': picture('black-only', 2),
      'p3.tif': picture('black-only', 3),
    });
    const comparison = await compared(top, { whole: true });
    const { summary } = await checked(top);
    assert.equal(summary.errors, 1);
    assert.equal(comparison.summary.new.errors, 1);
    assert.deepEqual(summed(comparison), counted({ summary } as Awaited<ReturnType<typeof checked>>));
    commit(top, { 'p1.tif': neutral(1), 'p2.tif': neutral(2), 'p3.tif': neutral(3) });
    assert.equal((await compared(top, { whole: true })).summary.ended.errors, 1);
  });

  it('is new where one more picture has it, and told of that one alone', async () => {
    const top = repositoryOf({
      ...strict,
      ...Object.fromEntries([1, 2, 3, 4].map(i => [`p${i}.tif`, neutral(i)])),
      ...Object.fromEntries([5, 6, 7, 8].map(i => [`p${i}.tif`, picture('black-only', i)])),
    });
    const before = await checked(top);
    commit(top, { 'p9.tif': picture('black-only', 9), 'p10.tif': neutral(10) });
    const comparison = await compared(top, { whole: true });
    const { summary } = comparison;
    assert.deepEqual([summary.new.errors, summary.ended.errors, summary.unchanged.errors], [1, 0, 0]);
    assert.deepEqual(summary.base, counted(before), 'though nothing of it ended or is as before');
    assert.deepEqual(summed(comparison), counted(await checked(top)));
    const blocks = blocksNow(comparison, 'new').filter(({ rule }) => rule === 'mixed-encodings');
    assert.deepEqual(blocks.map(namesOf), [['p9.tif']]);
    assert.match(blocks[0].entries[0].message, /That leaves p9\.tif and, as before, 4 others to convert/);
    assert.deepEqual(blocks[0].book, []);
    assert.deepEqual(verdicts(comparison), [
      ['p10.tif', 'ahead'],
      ['p9.tif', 'differs'],
    ]);
    for (const name of ['p9.tif', 'p10.tif']) fs.rmSync(path.join(top, name));
    commit(top);
    const back = await compared(top, { whole: true });
    assert.deepEqual(
      blocksNow(back, 'ended')
        .filter(({ rule }) => rule === 'mixed-encodings')
        .map(block => [block.rule, namesOf(block), block.book.length]),
      [['mixed-encodings', ['p9.tif'], 0]],
    );
  });

  it('is nothing new where a note about several pictures is one of each again, or one of several', async () => {
    const untagged = {
      'evengrey.json':
        '{ "process": "offset-coated", "rules": { "wrong-extension": "off", "untagged": ["note", { "rgb": "always" }] } }',
    };
    const four = Object.fromEntries([1, 2, 3, 4].map(i => [`p${i}.tif`, neutral(i)]));
    const top = repositoryOf({ ...untagged, ...four });
    const news = async () => {
      const comparison = await compared(top, { whole: true });
      const { others, book } = comparison;
      const told = [...others.map(({ findings }) => findings), book];
      return (['new', 'ended'] as const).map(which => [
        ...rulesOf(comparison, which),
        ...told.flatMap(of => of[which].map(({ rule }) => rule)),
      ]);
    };
    fs.rmSync(path.join(top, 'p4.tif'));
    commit(top);
    assert.deepEqual(await news(), [[], ['p4.tif untagged']]);
    commit(top, { 'p4.tif': neutral(4) });
    assert.deepEqual(await news(), [['p4.tif untagged'], []]);
  });

  it('has no picture match a book that is split, and blames those that are to be converted', async () => {
    const top = repositoryOf({
      ...strict,
      ...Object.fromEntries([1, 2, 3, 4].map(i => [`p${i}.tif`, neutral(i)])),
    });
    commit(top, { 'p1.tif': picture('black-only', 1), 'p2.tif': picture('black-only', 2) });
    const comparison = await compared(top, { whole: true });
    assert.deepEqual(verdicts(comparison), [
      ['p1.tif', 'differs'],
      ['p2.tif', 'differs'],
    ]);
  });

  it('has nothing ended of a picture that cannot be read any more, or is placed and gone', async () => {
    const placed = { 'book.md': [1, 2, 3, 4, 5].map(i => `![p](p${i}.tif)\n`).join('\n') };
    const top = repositoryOf({
      ...{ ...settings, ...placed },
      ...Object.fromEntries([1, 2, 3].map(i => [`p${i}.tif`, neutral(i)])),
      ...Object.fromEntries([4, 5].map(i => [`p${i}.tif`, picture('black-only', i)])),
    });
    const { summary: before } = await checked(top);
    assert.equal(before.warnings, 2);
    fs.rmSync(path.join(top, 'p5.tif'));
    commit(top, { 'p4.tif': picture('broken', 4) });
    const comparison = await compared(top, { whole: true });
    assert.deepEqual(rulesOf(comparison, 'new'), ['p4.tif unreadable', 'p5.tif unreadable']);
    assert.deepEqual(rulesOf(comparison, 'ended'), []);
    assert.deepEqual([comparison.summary.ended.warnings, comparison.summary.base.warnings], [0, 2]);
    commit(top, { 'p4.tif': neutral(4), 'p5.tif': picture('black-only', 5) });
    assert.deepEqual(rulesOf(await compared(top, { whole: true }), 'ended'), [
      'p4.tif unreadable',
      'p5.tif unreadable',
    ]);
  });

  it('keeps a waived mismatch a mismatch, and counts it as neither new nor ended', async () => {
    const top = repositoryOf({
      ...strict,
      ...Object.fromEntries([1, 2, 3, 4].map(i => [`p${i}.tif`, neutral(i)])),
    });
    commit(top, { 'p2.tif': picture('black-only', 2) });
    const { waivers } = waiveAll(await checked(top), [], []);
    assert.equal(waivers.length, 1);
    commit(top, { [WAIVERS_FILE]: JSON.stringify({ waivers }) });
    const comparison = await compared(top, { whole: true, base: 'HEAD~2' });
    assert.deepEqual(
      comparison.changes[0].pages[0].waived.map(({ rule }) => rule),
      ['mixed-encodings'],
    );
    const [match] = comparison.changes[0].pages[0].matches;
    assert.deepEqual([match.verdict, match.rules, match.waived], ['differs', ['mixed-encodings'], true]);
    assert.equal(comparison.summary.new.errors, 0);
    assert.equal((await compared(top, { whole: true })).summary.ended.errors, 0);
  });

  it('says of no picture that it does not match any more where only its waiver is gone', async () => {
    const top = repositoryOf({
      ...strict,
      ...Object.fromEntries([1, 2, 3, 4, 5].map(i => [`p${i}.tif`, neutral(i)])),
      'p6.tif': picture('black-only', 6),
    });
    const { waivers } = waiveAll(await checked(top), [], []);
    commit(top, { [WAIVERS_FILE]: JSON.stringify({ waivers }) });
    const figures = { ...waivers[0], value: { ...waivers[0].value, majority: 'single-channel' } };
    for (const [left, more] of [
      [[], {}],
      [[figures], { 'p1.tif': neutral('other') }],
    ] as const) {
      commit(top, { [WAIVERS_FILE]: JSON.stringify({ waivers: left }), ...more });
      assert.match(
        setVerdict(await compared(top, { whole: true })),
        /p6\.tif, unchanged itself, does not match the rest of the book, as before; what says so was waived, and is not any more\.$/,
      );
      commit(top, { [WAIVERS_FILE]: JSON.stringify({ waivers }) });
    }
  });

  it('tells waivers that the change leaves behind, why, and not what waived nothing before', async () => {
    const top = repositoryOf({
      ...strict,
      ...Object.fromEntries([1, 2, 3, 4, 5].map(i => [`p${i}.tif`, neutral(i)])),
      'p6.tif': picture('black-only', 6),
    });
    const { waivers } = waiveAll(await checked(top), [], []);
    const idle = { ...waivers[0], picture: 'p0.tif', content: ['0'.repeat(64)] };
    commit(top, { [WAIVERS_FILE]: JSON.stringify({ waivers: [...waivers, idle] }) });
    commit(top, { 'p6.tif': picture('black-only', 'again') });
    const told = async (options = {}) =>
      (await compared(top, { whole: true, ...options })).notices.filter(notice =>
        /of no finding/.test(notice),
      );
    const stale = (why: string) => [
      `Since this change ${WAIVERS_FILE} has 1 waiver of no finding: mixed-encodings on p6.tif (${why}).`,
    ];
    assert.deepEqual(await told(), stale('exported again'));
    assert.deepEqual(await told({ whole: false }), [], 'nobody knows it of pictures that were not looked at');
    git(top, 'rm', '--quiet', 'p6.tif');
    commit(top);
    assert.deepEqual(await told(), [], 'it was of none before');
    assert.deepEqual(await told({ base: 'HEAD~2' }), stale('not in the book any more'));
  });

  it('takes new contents that nobody looked at for a new error, whatever was there before', async () => {
    const top = repositoryOf({ ...settings, 'a.tif': pointer('1'), 'b.tif': pointer('2') });
    const before = await checked(top);
    commit(top, { 'a.tif': pointer('3') });
    const comparison = await compared(top, { whole: true });
    const { changes, summary } = comparison;
    const [{ findings }] = changes[0].pages;
    assert.deepEqual([findings.new.map(({ rule }) => rule), findings.unchanged], [['not-fetched'], []]);
    assert.deepEqual([summary.new.errors, summary.ended.errors, summary.unchanged.errors], [1, 0, 1]);
    assert.deepEqual(summary.base, counted(before), 'though nobody knows what a.tif was');
    assert.match(
      closing(comparison),
      /Before, a check counted 2 errors, .*: what was not fetched then has not ended, since nobody knows what it was\.$/,
    );
  });

  it('tells that a layout no longer places what is not there', async () => {
    const top = repositoryOf({ ...settings, 'a.tif': neutral(1), 'book.md': '![a](a.tif)\n\n![b](b.tif)\n' });
    commit(top, { 'book.md': '![a](a.tif)\n' });
    const { changes, summary } = await compared(top);
    assert.deepEqual(
      changes.map(({ kind, path }) => [kind, path]),
      [['deleted', 'b.tif']],
    );
    assert.equal(summary.ended.errors, 1);
  });

  it('are of each picture once, where one is renamed into a blank place and leaves its own blank', async () => {
    const top = repositoryOf({
      ...settings,
      ...{ 'a.tif': neutral(1), 'b.tif': neutral(2), 'odd.tif': picture('black-only', 3) },
      'book.md': ['a', 'b', 'odd', 'blank'].map(name => `![p](${name}.tif)\n`).join('\n'),
    });
    git(top, 'mv', 'odd.tif', 'blank.tif');
    commit(top);
    const comparison = await compared(top, { whole: true });
    assert.deepEqual(
      comparison.changes.map(({ kind, path }) => [kind, path]),
      [
        ['renamed', 'blank.tif'],
        ['deleted', 'odd.tif'],
      ],
    );
    const told = comparison.changes.map(({ pages: [{ findings }] }) =>
      [findings.new, findings.ended].map(some => some.map(({ rule }) => rule)),
    );
    assert.deepEqual(told, [
      [[], ['unreadable']],
      [['unreadable'], []],
    ]);
    const { summary } = comparison;
    assert.deepEqual([summary.new.errors, summary.ended.errors, summary.base.errors], [1, 1, 1]);
  });
});
