// What reading costs beside the bare decode of the same files: both in forked processes, two lanes, taken in turns so
// that a machine that slows down slows both. Prints ratios; seconds only where there is no floor to compare with.
import { fork, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { benchPictures, manySmallPictures } from './pictures.mjs';

const { values } = parseArgs({
  options: {
    rounds: { type: 'string', default: '7' },
    dist: { type: 'string', default: 'dist' },
    only: { type: 'string', default: '' },
    small: { type: 'string', default: '1000' },
  },
});
const LANES = 2;

/** Two children of one kind; `time` reads a file once in each and says how long both took. */
async function lanes(script) {
  const children = Array.from({ length: LANES }, () =>
    fork(script, { serialization: 'advanced', execArgv: ['--expose-gc'] }),
  );
  await Promise.all(children.map(child => new Promise(ready => child.once('message', ready))));
  let id = 0;
  const ask = (child, file) =>
    new Promise((resolve, reject) => {
      const mine = ++id;
      child.on('message', function answer(reply) {
        if (reply.id !== mine || reply.kind === 'size') return;
        child.off('message', answer);
        if (reply.ok) resolve(reply);
        else reject(new Error(`${file}: ${reply.message}`));
      });
      child.send({ id: mine, kind: 'facts', file });
    });
  return {
    async time(file) {
      const since = process.hrtime.bigint();
      await Promise.all(children.map(child => ask(child, file)));
      return Number(process.hrtime.bigint() - since) / 1e9;
    },
    close() {
      for (const child of children) child.disconnect();
    },
  };
}

const sorted = list => [...list].sort((a, b) => a - b);
const median = list => sorted(list)[Math.floor(list.length / 2)];
const spread = list => `${sorted(list)[0].toFixed(2)} - ${sorted(list).at(-1).toFixed(2)}`;

async function againstFloor() {
  const { usual, coloured } = await benchPictures();
  const floor = await lanes('test/bench/floor.mjs');
  const check = await lanes(path.join(values.dist, 'reader.js'));
  console.log(
    `Reading and judging, as a ratio to the bare decode; ${values.rounds} rounds in turns, ${LANES} lanes`,
  );
  console.log(`${'picture'.padEnd(28)}  median  spread`);
  await compare(usual, 'all of these', floor, check);
  await compare(coloured, 'all in colour', floor, check);
  floor.close();
  check.close();
}

async function compare(files, sum, floor, check) {
  const line = (name, ratios) =>
    console.log(`${name.padEnd(28)}  ${median(ratios).toFixed(2).padStart(6)}  ${spread(ratios)}`);
  const totals = Array.from({ length: Number(values.rounds) }, () => ({ bare: 0, whole: 0 }));
  for (const [name, file] of Object.entries(files)) {
    if (!name.includes(values.only)) continue;
    await floor.time(file);
    await check.time(file);
    const ratios = [];
    for (const total of totals) {
      const bare = await floor.time(file);
      const whole = await check.time(file);
      total.bare += bare;
      total.whole += whole;
      ratios.push(whole / bare);
    }
    line(name, ratios);
  }
  if (totals[0].bare > 0)
    line(
      sum,
      totals.map(({ bare, whole }) => whole / bare),
    );
}

async function unchangedPictures(count) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-warm-'));
  const book = path.join(folder, 'book');
  fs.mkdirSync(book);
  fs.writeFileSync(path.join(book, 'evengrey.json'), '{ "process": "silver-halide" }\n');
  await manySmallPictures(book, count);
  const run = () => {
    const since = process.hrtime.bigint();
    const { status } = spawnSync(
      process.execPath,
      [
        path.join(values.dist, 'cli.js'),
        'check',
        book,
        '--format',
        'json',
        '--output',
        path.join(folder, 'report.json'),
      ],
      {
        env: { ...process.env, EVENGREY_CACHE_DIR: path.join(folder, 'cache') },
        stdio: ['ignore', 'ignore', 'inherit'],
      },
    );
    if (status !== 0) throw new Error(`check ended with ${status}`);
    return Number(process.hrtime.bigint() - since) / 1e9;
  };
  const cold = run();
  fs.rmSync(path.join(folder, 'report.json'));
  const warm = Array.from({ length: 5 }, () => {
    const seconds = run();
    fs.rmSync(path.join(folder, 'report.json'));
    return seconds;
  });
  console.log(
    `\n${count} unchanged small pictures, whole process: ${median(warm).toFixed(2)} s (${spread(warm)});`,
  );
  console.log(`  the first time ${cold.toFixed(2)} s`);
  fs.rmSync(folder, { recursive: true });
}

await againstFloor();
if (Number(values.small)) await unchangedPictures(Number(values.small));
