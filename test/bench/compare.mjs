// What `compare` costs where 30 of 200 pictures changed, beside a `check` of those 60 contents as files: processor time of
// all processes and time by the clock, taken in turns so that a machine that slows down slows both. Neither knows a
// picture from before. With contents as git leaves them after a commit, and packed as they are after a clone.
import { execFileSync, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { changedPictures, manySmallPictures } from './pictures.mjs';

const { values } = parseArgs({
  options: {
    rounds: { type: 'string', default: '7' },
    dist: { type: 'string', default: 'dist' },
    only: { type: 'string', default: '' },
  },
});

const SIZES = { '8.6 megapixels': [3600, 2400], '0.24 megapixels': [600, 400] };
const UNCHANGED = 170;
const SETTINGS = '{ "process": "silver-halide" }\n';

const scratch = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-compare-'));
const cache = path.join(scratch, 'cache');

/** Seconds of a program: of all its processes, and by the clock. */
function cost(...args) {
  fs.rmSync(cache, { recursive: true, force: true });
  const since = process.hrtime.bigint();
  const timed = spawnSync(
    'sh',
    [
      '-c',
      '"$@"; code=$?; times; exit $code',
      'sh',
      process.execPath,
      path.join(values.dist, 'cli.js'),
      ...args,
    ],
    { env: { ...process.env, EVENGREY_CACHE_DIR: cache }, encoding: 'utf8' },
  );
  const clock = Number(process.hrtime.bigint() - since) / 1e9;
  if (timed.status !== 0) throw new Error(`${args.join(' ')}\n${timed.stderr}${timed.stdout}`);
  const [, children] = timed.stdout.trim().split('\n').slice(-2);
  const processor = [...children.matchAll(/(\d+)m([\d.]+)s/g)].reduce(
    (sum, [, m, s]) => sum + m * 60 + Number(s),
    0,
  );
  return { processor, clock, said: timed.stdout };
}

const name = i => `plate-${String(i).padStart(2, '0')}.jpg`;

/** A book of 200 pictures in two revisions, and the changed contents of both as a book of their own. */
async function books(folder, pairs) {
  const [repository, files] = ['repository', 'files'].map(of => path.join(folder, of));
  for (const book of [repository, files]) {
    fs.mkdirSync(book, { recursive: true });
    fs.writeFileSync(path.join(book, 'evengrey.json'), SETTINGS);
  }
  const git = (...args) =>
    execFileSync('git', ['-c', 'user.name=Bench', '-c', 'user.email=bench@example.invalid', ...args], {
      cwd: repository,
      stdio: ['ignore', 'ignore', 'inherit'],
    });
  const commit = side => {
    for (const [i, pair] of pairs.entries()) fs.copyFileSync(pair[side], path.join(repository, name(i)));
    git('add', '--all');
    git('commit', '--quiet', '--message', 'plates');
  };
  git('init', '--quiet');
  await manySmallPictures(repository, UNCHANGED);
  commit(0);
  commit(1);
  for (const [i, pair] of pairs.entries())
    for (const [side, file] of pair.entries()) fs.copyFileSync(file, path.join(files, `${side}-${name(i)}`));
  // as after any command of git that a person gives: what was written within the clock's tick is looked at once
  await new Promise(past => setTimeout(past, 1100));
  git('status');
  return { repository, files, git };
}

const sorted = list => [...list].sort((a, b) => a - b);
const median = list => sorted(list)[Math.floor(list.length / 2)];
const shown = list =>
  `${median(list).toFixed(2)} (${sorted(list)[0].toFixed(2)} - ${sorted(list).at(-1).toFixed(2)})`;

function measure(title, { repository, files }) {
  const compared = () => cost('compare', 'HEAD~1', '--book', repository);
  const checked = () => cost('check', files);
  const [first] = [compared(), checked()];
  if (!/30 changed|30 pictures changed/.test(first.said)) throw new Error(first.said);
  const rounds = Array.from({ length: Number(values.rounds) }, (_, at) => {
    // whoever comes second finds the machine warmer
    const of = { compared, checked };
    const order = at % 2 ? ['compared', 'checked'] : ['checked', 'compared'];
    return Object.fromEntries(order.map(which => [which, of[which]()]));
  });
  const ratios = by => shown(rounds.map(round => round.compared[by] / round.checked[by]));
  const seconds = by => median(rounds.map(round => round.checked[by])).toFixed(2);
  console.log(
    `${title.padEnd(26)} ${ratios('processor')}  ${ratios('clock')}    ${seconds('processor')} s, ${seconds('clock')} s`,
  );
}

console.log(
  `compare beside check; ${values.rounds} rounds in turns; load ${os.loadavg()[0].toFixed(2)} at the start`,
);
console.log(`${''.padEnd(26)} processor           clock                 check: processor, clock`);
for (const [size, [width, height]] of Object.entries(SIZES)) {
  if (!size.includes(values.only)) continue;
  const made = await books(path.join(scratch, size), await changedPictures(width, height));
  measure(`${size}, loose`, made);
  made.git('gc', '--quiet');
  measure(`${size}, packed`, made);
}
fs.rmSync(scratch, { recursive: true });
