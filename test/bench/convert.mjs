// What a conversion of 24 megapixels costs beside sharp's bare decoding and encoding of the same file into the same
// format: processor time of all processes, their start included, taken in turns so that a machine that slows down slows
// both. With the picture's facts in the cache, as after a check, and without, as of a picture that was never met.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { convertedPictures } from './pictures.mjs';

const { values } = parseArgs({
  options: {
    rounds: { type: 'string', default: '7' },
    dist: { type: 'string', default: 'dist' },
    only: { type: 'string', default: '' },
  },
});

/** What is asked of which picture. */
const ASKED = [
  ['JPEG, R=G=B', 'single-channel'],
  ['JPEG, a cast', 'rgb-neutral'],
  ['JPEG, a cast', 'rgb-neutral', '--as', 'jpeg'],
  ['JPEG, colour', 'rgb-neutral'],
  ['JPEG, colour', 'single-channel'],
  ['PNG, 8 bit RGB', 'single-channel'],
  ['TIFF, 8 bit RGB', 'single-channel'],
  ['TIFF, 16 bit RGB', 'single-channel'],
  ['TIFF, four inks', 'rgb-neutral'],
  ['TIFF, four inks', 'single-channel'],
  ['JPEG, four inks', 'rgb-neutral'],
];
const FORMAT = { '.jpg': 'jpeg', '.png': 'png', '.tif': 'tiff' };

/** Seconds of processor time of a program and all processes that it started and waited for. */
function seconds(args, env = {}) {
  const timed = spawnSync('sh', ['-c', '"$@"; code=$?; times; exit $code', 'sh', process.execPath, ...args], {
    env: { ...process.env, ...env },
    encoding: 'utf8',
  });
  if (timed.status !== 0) throw new Error(`${args.join(' ')}\n${timed.stderr}${timed.stdout}`);
  const [, children] = timed.stdout.trim().split('\n').slice(-2);
  return [...children.matchAll(/(\d+)m([\d.]+)s/g)].reduce((sum, [, m, s]) => sum + m * 60 + Number(s), 0);
}

const scratch = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-convert-'));
const book = path.join(scratch, 'book');
const cache = path.join(scratch, 'cache');
fs.mkdirSync(book);

const program = (...args) => [path.join(values.dist, 'cli.js'), ...args];
const results = () =>
  fs.readdirSync(book).filter(name => name.includes('.rgb-') || name.includes('.single-'));

/** @param known whether the facts are in the cache */
function converted(file, to, more, known) {
  for (const name of results()) fs.rmSync(path.join(book, name));
  const dir = known ? cache : path.join(scratch, 'unknown');
  const cost = seconds(program('convert', file, '--to', to, ...more), { EVENGREY_CACHE_DIR: dir });
  fs.rmSync(path.join(scratch, 'unknown'), { recursive: true, force: true });
  return cost;
}

const sorted = list => [...list].sort((a, b) => a - b);
const median = list => sorted(list)[Math.floor(list.length / 2)];
const shown = list =>
  `${median(list).toFixed(2)} (${sorted(list)[0].toFixed(2)} - ${sorted(list).at(-1).toFixed(2)})`;

function compare(name, source, [to, ...more]) {
  const file = path.join(book, path.basename(source));
  fs.copyFileSync(source, file);
  spawnSync(process.execPath, program('check', file), { env: { ...process.env, EVENGREY_CACHE_DIR: cache } });
  converted(file, to, more, true);
  const [result] = results();
  const format = FORMAT[path.extname(result)];
  const rounds = Array.from({ length: Number(values.rounds) }, () => ({
    floor: seconds(['test/bench/recode.mjs', file, format]),
    known: converted(file, to, more, true),
    fresh: converted(file, to, more, false),
  }));
  const ratios = of => shown(rounds.map(round => round[of] / round.floor));
  console.log(
    `${`${name} to ${[to, ...more].join(' ')}`.padEnd(46)} ${format.padEnd(5)} ${ratios('known')}  ${ratios('fresh')}`,
  );
  for (const name of fs.readdirSync(book)) fs.rmSync(path.join(book, name));
}

const pictures = await convertedPictures();
console.log(
  `24 megapixels; ${values.rounds} rounds in turns; load ${os.loadavg()[0].toFixed(2)} at the start`,
);
for (const [name, ...asked] of ASKED)
  if (`${name} ${asked}`.includes(values.only)) compare(name, pictures[name], asked);
fs.rmSync(scratch, { recursive: true });
