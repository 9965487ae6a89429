import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { checkBook } from '../../../src/book/check';
import { claimsOn, isOfBook } from '../../../src/book/revisions/claims';
import { loadSettings } from '../../../src/book/settings/load';
import { applyWaivers, waiveAll } from '../../../src/book/waivers/apply';
import { readWaivers, WAIVERS_FILE } from '../../../src/book/waivers/file';
import { closing } from '../../../src/report/compare/words';
import type { Comparison } from '../../../src/shared/comparison';
import type { BookReport, Finding } from '../../../src/shared/finding';
import { compared, neutral, picture, pool } from '../revisions/support/compared';
import { commit, git, repositoryOf } from '../revisions/support/repository';

const NAMES = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'].map(name => `${name}.tif`);
const settings = '{ "process": "offset-coated", "rules": { "mixed-encodings": "error" } }';
const placing = (names: readonly string[]) => names.map(name => `![p](${name})\n`).join('\n');

/** Always the same numbers below `most`. */
function numbers(seed: number): (most: number) => number {
  let state = seed;
  return most => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return Math.floor((state / 2147483648) * most);
  };
}

async function checked(root: string): Promise<BookReport> {
  const { settings: read } = await loadSettings(root);
  const report = await checkBook({ root, paths: [root], settings: read!, pool: pool(), cache: null });
  return applyWaivers(report, (await readWaivers(root)).waivers).report;
}

/** Of a check, how often each rule speaks: of a picture, or of the book. */
const saidIn = ({ pictures, findings }: BookReport): Map<string, number> =>
  timesOf([...pictures.flatMap(picture => claimsOn(picture, findings)), ...findings.filter(isOfBook)]);

const timesOf = (findings: readonly Finding[]): Map<string, number> =>
  findings.reduce((times, { rule }) => times.set(rule, (times.get(rule) ?? 0) + 1), new Map());

const toldIn = ({ changes, others, book }: Comparison, which: 'new' | 'ended'): Finding[] => [
  ...changes.flatMap(({ pages }) => pages.flatMap(({ findings }) => findings[which])),
  ...others.flatMap(({ findings }) => findings[which]),
  ...book[which],
];

const counted = ({ summary: { errors, warnings, notes } }: BookReport) => ({ errors, warnings, notes });

/** A book whose pictures lie beside its layout; or in a folder, and are placed by its name or through links to it. */
interface Kind {
  folder: string;
  ways: readonly string[];
}
const BESIDE: Kind = { folder: '', ways: [''] };
const LINKED: Kind = { folder: 'pictures/', ways: ['figs/', 'pictures/', 'more/figs/'] };

function link(top: string, target: string | null): void {
  fs.rmSync(path.join(top, 'figs'), { force: true });
  if (target !== null) fs.symlinkSync(target, path.join(top, 'figs'));
}

/** What somebody does to a folder of pictures, one thing at random. */
function change(top: string, { folder, ways }: Kind, random: (most: number) => number, step: number): void {
  const at = (name: string) => path.join(top, folder, name);
  const there = NAMES.filter(name => fs.existsSync(at(name)));
  const blank = NAMES.filter(name => !there.includes(name));
  const some = <T>(names: readonly T[]) => names[random(names.length)];
  const one = some(there);
  const other = some(there);
  switch (random(folder ? 9 : 8)) {
    case 0:
      fs.renameSync(at(one), at(`${some(blank)}`));
      break;
    case 1:
      fs.renameSync(at(one), at('unplaced.tif'));
      break;
    case 2:
      if (fs.existsSync(at('unplaced.tif'))) fs.renameSync(at('unplaced.tif'), at(some(blank)));
      break;
    case 3:
      fs.chmodSync(at(one), fs.statSync(at(one)).mode ^ 0o111);
      break;
    case 4:
      fs.renameSync(at(one), at('swap'));
      if (one !== other) fs.renameSync(at(other), at(one));
      fs.renameSync(at('swap'), at(other));
      break;
    case 5:
      fs.rmSync(at(one));
      break;
    case 6:
      fs.writeFileSync(at(some(NAMES)), picture(some(['black-only', 'rgb-neutral']), `${step}`));
      break;
    case 7:
      fs.writeFileSync(
        path.join(top, 'book.md'),
        placing(NAMES.filter(() => random(4) > 0).map(name => some(ways) + name)),
      );
      break;
    default:
      link(top, some(['pictures', 'pictures/', 'nowhere', '..', null]));
  }
  if (NAMES.filter(name => fs.existsSync(at(name))).length < 3)
    for (const name of NAMES.slice(0, 5)) fs.writeFileSync(at(name), neutral(`${name} ${step}`));
}

describe('the sums of a comparison', () => {
  for (const [seed, kind, isWaived] of [
    [1, BESIDE, false],
    [2, BESIDE, false],
    [3, BESIDE, true],
    [4, LINKED, false],
    [5, LINKED, false],
  ] as const)
    it(`of many books come to what checks of both sides count, rule by rule: ${seed}`, async () => {
      const random = numbers(seed);
      const top = repositoryOf({
        'evengrey.json': settings,
        'book.md': placing(NAMES.map((name, i) => kind.ways[i % kind.ways.length] + name)),
        ...Object.fromEntries(
          NAMES.slice(0, 5).map((name, i) => [
            kind.folder + name,
            picture(i % 3 ? 'rgb-neutral' : 'black-only', i),
          ]),
        ),
      });
      if (kind === LINKED) {
        fs.mkdirSync(path.join(top, 'more'));
        fs.symlinkSync('../figs', path.join(top, 'more/figs'));
        link(top, 'pictures');
        commit(top);
      }
      if (isWaived) {
        const { waivers } = waiveAll(await checked(top), [], []);
        commit(top, { [WAIVERS_FILE]: JSON.stringify({ waivers }) });
      }
      let before = await checked(top);
      for (let step = 0; step < 15; step++) {
        change(top, kind, random, step);
        if (random(2) === 0) change(top, kind, random, step + 100);
        commit(top);
        const after = await checked(top);
        const comparison = await compared(top, { whole: true });
        const what = `seed ${seed}, step ${step}: ${git(top, 'diff', '-M', '--name-status', 'HEAD~1', 'HEAD').replace(/\n/g, '; ')}`;
        const { summary } = comparison;
        const both = (key: 'errors' | 'warnings' | 'notes') => summary.new[key] + summary.unchanged[key];
        assert.deepEqual(
          { errors: both('errors'), warnings: both('warnings'), notes: both('notes') },
          counted(after),
          what,
        );
        assert.deepEqual(summary.base, counted(before), what);
        const [fresh, ended] = [toldIn(comparison, 'new'), toldIn(comparison, 'ended')].map(timesOf);
        const [was, is] = [saidIn(before), saidIn(after)];
        const held = comparison.book.unchanged.map(({ message }) => message);
        const apart = after.findings.filter(
          ({ rule, message }) => !held.includes(message) && !fresh.has(rule),
        );
        assert.deepEqual(apart, [], `${what}: what stays of the book is held`);
        const lived = timesOf([
          ...after.pictures.flatMap(({ waived = [], ...picture }) =>
            claimsOn({ ...picture, findings: waived }, after.waived ?? []),
          ),
        ]);
        const lost = timesOf(
          comparison.changes.flatMap(({ pages }) =>
            pages.flatMap(({ before: x, after: y }) =>
              x && !x.facts.unreadable && y?.facts.unreadable ? claimsOn(x, before.findings) : [],
            ),
          ),
        );
        for (const rule of new Set([...was.keys(), ...is.keys(), ...fresh.keys(), ...ended.keys()])) {
          const of = (times: Map<string, number>) => times.get(rule) ?? 0;
          const rest = of(was) + of(fresh) - of(ended) - of(is);
          // what is waived since has not ended, nor what was said of a picture that nobody can look at any more
          assert.ok(
            rest >= 0 && rest <= of(lived) + of(lost),
            `${what} ${rule} ${of(was)} + ${of(fresh)} - ${of(ended)} = ${of(is)}`,
          );
        }
        const own = comparison.changes.flatMap(({ pages }) =>
          pages.flatMap(({ findings }) => findings.ended),
        );
        assert.equal(new Set(own).size, own.length - twice(own), what);
        const isSum = (['errors', 'warnings', 'notes'] as const).every(
          key => summary.base[key] === summary.ended[key] + summary.unchanged[key],
        );
        assert.equal(/Before, a check counted/.test(closing(comparison)), !isSum, what);
        before = after;
      }
    });
});

/** How often what is said of several pictures stands in a list once more. */
const twice = (findings: readonly Finding[]): number =>
  findings.filter((finding, at) =>
    !Array.isArray(finding.data.pictures) ? false : findings.indexOf(finding) < at,
  ).length;
