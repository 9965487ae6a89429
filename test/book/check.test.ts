import assert from 'node:assert/strict';
import path from 'node:path';
import { checkBook } from '../../src/book/check';
import { noSettings, type Settings } from '../../src/book/settings/settings';
import { defaultTarget } from '../../src/print';
import type { PictureFacts } from '../../src/shared/picture';
import { brokenFacts, greyFacts } from './support/facts';
import { temporaryFolder } from './support/folder';

const sha = '0'.repeat(64);

async function check(
  files: Record<string, PictureFacts[]>,
  settings: Partial<Settings> = {},
  {
    named = [''],
    layouts = {},
    ...more
  }: {
    /** Files of it; else the whole book. */
    named?: string[];
    /** Texts beside them. */
    layouts?: Record<string, string>;
    signal?: AbortSignal;
    onProgress?: (done: number, total: number) => void;
  } = {},
) {
  const root = temporaryFolder({
    ...layouts,
    ...Object.fromEntries(Object.keys(files).map(name => [name, ''])),
  });
  const pool = { facts: async (file: string) => files[path.relative(root, file)] };
  return checkBook({
    root,
    paths: named.map(file => path.join(root, file)),
    settings: { ...noSettings, ...settings },
    pool,
    cache: null,
    ...more,
  });
}

describe('checking a book', () => {
  it('says where each picture stands, by the layouts, though the report goes by names', async () => {
    const names = ['1.png', '2.png', '3.png', '9.png'];
    const files = Object.fromEntries(names.map(name => [name, [greyFacts(sha)]]));
    const stands = async (settings: Partial<Settings>) => {
      const layouts = { 'book.md': '![](3.png) ![](1.png)\n\n![](2.png) ![](3.png)\n' };
      const { pictures } = await check(files, { pictures: ['*.png'], ...settings }, { layouts });
      return pictures.map(({ path, position }) => [path, position]);
    };
    assert.deepEqual(await stands({}), [
      ['1.png', 2],
      ['2.png', 3],
      ['3.png', 1],
      ['9.png', null],
    ]);
    assert.deepEqual(await stands({ spreads: [['9.png', '2.png']] }), [
      ['1.png', 2],
      ['2.png', 4],
      ['3.png', 1],
      ['9.png', 3],
    ]);
    assert.deepEqual(
      (await stands({ layouts: [] })).map(([, position]) => position),
      [null, null, null, null],
    );
  });

  it('forecasts each picture on its own targets and counts what it found', async () => {
    const report = await check(
      {
        'b.png': [greyFacts(sha)],
        'a.tif': [greyFacts(sha), greyFacts(sha, { page: 2 })],
        'c.png': [brokenFacts('truncated')],
      },
      { targets: [defaultTarget('offset-coated'), defaultTarget('inkjet')] },
    );
    assert.deepEqual(
      report.pictures.map(p => [p.path, p.facts.page, p.forecasts.map(f => f.condition.process)]),
      [
        ['a.tif', 1, ['offset-coated', 'inkjet']],
        ['a.tif', 2, ['offset-coated', 'inkjet']],
        ['b.png', 1, ['offset-coated', 'inkjet']],
        ['c.png', 1, []],
      ],
    );
    assert.deepEqual(report.summary.encodings, { 'rgb-neutral': 3, unreadable: 1 });
    assert.deepEqual([report.summary.pictures, report.summary.errors], [4, 1]);
    assert.equal(report.pictures[3].findings[0].rule, 'unreadable');
  });

  it('judges a converted copy in the place of its original, and leaves a tone that was given on purpose', async () => {
    const remedied = { from: sha, to: 'rgb-toned', toned: true, fitted: false } as const;
    const toned = { encoding: 'rgb-toned' as const };
    const others = Object.fromEntries(
      ['c.png', 'd.png', 'e.png'].map((name, i) => [name, [greyFacts(String(i + 2).repeat(64))]]),
    );
    const book = (copy: Partial<PictureFacts>) =>
      check(
        {
          'a-toned.png': [greyFacts('1'.repeat(64), { ...toned, ...copy })],
          'a.png': [greyFacts(sha, toned)],
          ...others,
        },
        { rules: { 'low-resolution': 'off' } },
      );
    const found = (report: Awaited<ReturnType<typeof check>>) =>
      report.pictures.map(({ path, findings }) => [path, findings.map(({ rule }) => rule)]).slice(0, 2);
    const before = await book({});
    assert.deepEqual(found(before), [
      ['a-toned.png', ['mixed-encodings']],
      ['a.png', ['mixed-encodings']],
    ]);
    assert.deepEqual(before.notices, []);
    const after = await book({ remedied });
    assert.deepEqual(found(after), [
      ['a-toned.png', []],
      ['a.png', []],
    ]);
    assert.equal(after.pictures[1].replacedBy, 'a-toned.png');
    assert.deepEqual(after.notices, [
      'One picture is replaced by a converted copy and is not judged: a.png by a-toned.png.',
    ]);
    assert.deepEqual(after.summary.encodings, { 'rgb-toned': 1, 'rgb-neutral': 3 });
  });

  it('obeys the rules’ settings', async () => {
    const report = await check({ 'c.png': [brokenFacts('truncated')] }, { rules: { unreadable: 'off' } });
    assert.equal(report.summary.errors, 0);
  });

  it('says what of the settings is of nothing, where the whole book was looked at', async () => {
    const settings = {
      ignore: ['drafts/**'],
      parts: [{ name: 'cover', pictures: ['covr/**'], targets: null }],
      targets: [{ ...defaultTarget('silver-halide'), name: 'book', paper: 'uncoated' as const }],
    };
    const doubt =
      'The target "book": no such paper is made for silver halide: the figures only move the paper\'s colour, a guess.';
    const whole = await check({ 'c.png': [greyFacts(sha)] }, settings);
    assert.deepEqual(whole.notices, [
      doubt,
      '"ignore" has drafts/**, and nothing that was searched matches it.',
      'The part "cover" holds no picture: nothing matches covr/**.',
      'A picture has few pixels (printed with 200 an inch: c.png, 8 mm), and nobody said how large it is to be, so whether that is enough is not judged: give a size under "placements", or in a layout.',
    ]);
    const some = await check({ 'c.png': [greyFacts(sha)] }, settings, { named: ['c.png'] });
    assert.deepEqual(some.notices, [doubt]);
  });

  it('tells its progress and stops when cancelled', async () => {
    const steps: string[] = [];
    const files = { 'a.png': [greyFacts(sha)], 'b.png': [greyFacts(sha)] };
    await check(files, {}, { onProgress: (done, total) => steps.push(`${done}/${total}`) });
    assert.deepEqual(steps, ['1/2', '2/2']);
    await assert.rejects(check(files, {}, { signal: AbortSignal.abort() }), { name: 'AbortError' });
  });
});
