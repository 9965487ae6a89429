// What the extension costs the editor, in the real VS Code: the delay of its extension host while a book is read, the
// time of activation among many pictures, and that from a picture's being saved to its finding. Figures of one machine
// in one hour: the load is printed beside them.
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import esbuild from 'esbuild';
import sharp from 'sharp';
import { startBridge } from '../e2e/bridge.mjs';
import { installServer } from '../e2e/server/install.mjs';
import { startServer } from '../e2e/vscode-server.mjs';
import { openWorkbench } from '../e2e/workbench.mjs';
import { benchPictures, manySmallPictures } from './pictures.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const { values } = parseArgs({
  options: {
    only: { type: 'string', default: '' },
    rounds: { type: 'string', default: '7' },
    pictures: { type: 'string', default: '500' },
    // of the processes between two saves, in s; from 25 on all that will be let go of them is gone
    rest: { type: 'string', default: '25' },
  },
});
const tmp = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-bench-editor-'));

const LONGEST_MS = 600_000 + Number(values.rounds) * Number(values.rest) * 1000;
/** Pictures of red, green and blue have a finding by these. */
const NO_RGB = { process: 'silver-halide', encodings: ['single-channel'] };

const measures = {
  async delay(folder) {
    settings(folder, NO_RGB);
    fs.mkdirSync(path.join(folder, '.vscode'));
    fs.writeFileSync(path.join(folder, '.vscode/settings.json'), '{ "evengrey.checkOnChange": false }\n');
    const count = Number(values.pictures);
    const { usual } = await benchPictures();
    const plate = await sharp(usual[TWELVE]).resize(2000).jpeg({ quality: 92 }).toBuffer();
    for (let n = 0; n < count; n++)
      fs.writeFileSync(path.join(folder, `${n}.jpg`), Buffer.concat([plate, Buffer.from(String(n))]));
    const { rest, busy, reading, found } = await inEditor('delay', folder);
    console.log(`Delay of the extension host, by a timer of 1 ms`);
    const line = (what, { half, p99, most, seconds, load }) =>
      console.log(
        `  ${what.padEnd(46)} median ${half.toFixed(1)} ms, p99 ${p99.toFixed(1)} ms, most ${most.toFixed(0)} ms` +
          ` in ${seconds.toFixed(0)} s; ${(load * 100).toFixed(0)} % of a core`,
      );
    line('at rest', rest);
    line('beside two busy processes that are not ours', busy);
    line(`while ${count} pictures of 3 megapixels are read`, reading);
    console.log(`  ${found} files with findings`);
  },

  async activation(folder) {
    settings(folder, NO_RGB);
    await manySmallPictures(folder, 2000);
    const { says } = await inEditor('activation', folder);
    console.log(`Activation in a book of 2000 pictures, as the editor says: ${says.replace(/\s+/g, ' ')}`);
  },

  async save(folder) {
    settings(folder, NO_RGB);
    const small = sharp({ create: { width: 300, height: 200, channels: 3, background: '#777' } });
    await small.clone().jpeg().toFile(path.join(folder, 'first.jpg'));
    for (const name of ['last', 'plate'])
      await small
        .clone()
        .toColourspace('b-w')
        .jpeg()
        .toFile(path.join(folder, `${name}.jpg`));
    const { usual } = await benchPictures();
    const figures = await inEditor('save', folder, { BENCH_PICTURE: usual[TWELVE] });
    console.log(`From a saved JPEG of 12 megapixels to its finding, up to ${values.rounds} times, in ms`);
    const line = (what, times) => console.log(`  ${what.padEnd(46)} ${told(times)}`);
    line('shortly after another', figures.warm);
    line(`after ${values.rest} s of rest`, figures.rested);
    for (const { name, resident, proportional } of figures.staying)
      console.log(
        `    of which stays: ${name}, ${resident.toFixed(0)} MB resident, ${proportional.toFixed(0)} MB by its share`,
      );
    line('the first one in a book just opened, all known', figures.opened);
    line('no process of ours running yet', figures.cold);
  },
};
const TWELVE = '12 MP JPEG 4:2:0, R=G=B';

function told(times) {
  const sorted = times.map(Math.round).sort((a, b) => a - b);
  return `median ${sorted[Math.floor(sorted.length / 2)]}, from ${sorted[0]} to ${sorted.at(-1)}`;
}

function settings(folder, keys) {
  fs.mkdirSync(folder, { recursive: true });
  fs.writeFileSync(path.join(folder, 'evengrey.json'), `${JSON.stringify(keys)}\n`);
}

/** Opens the folder in an editor of its own, has it measured there and returns the figures. */
async function inEditor(measure, workspace, env = {}) {
  const home = fs.mkdtempSync(path.join(tmp, 'editor-'));
  const result = path.join(home, 'figures.json');
  const log = fs.createWriteStream(path.join(home, 'log.txt'));
  const window = {};
  const bridge = await startBridge(window, home);
  const server = await startServer({
    code: await installServer(),
    tmp: home,
    log,
    env: {
      ...env,
      E2E_BRIDGE_URL: bridge.url,
      BENCH_MEASURE: measure,
      BENCH_RESULT: result,
      BENCH_ROUNDS: values.rounds,
      BENCH_REST: values.rest,
      BENCH_BUSY: path.join(root, 'test/bench/busy.cjs'),
    },
  });
  try {
    const workbench = await openWorkbench({
      server,
      log,
      workspace,
      development: root,
      tests: path.join(tmp, 'in-editor.cjs'),
    });
    window.page = workbench.page;
    const late = new Promise(resolve => setTimeout(resolve, LONGEST_MS, 'late').unref());
    if ((await Promise.race([workbench.finished, late])) === 'late')
      throw new Error(`${measure} did not come to an end: see ${home}/log.txt`);
    await workbench.close();
    if (!fs.existsSync(result)) throw new Error(`nothing was measured: see ${home}/log.txt`);
    return JSON.parse(fs.readFileSync(result, 'utf8'));
  } finally {
    await server.stop();
    bridge.close();
    log.end();
  }
}

await esbuild.build({
  entryPoints: [path.join(root, 'test/bench/in-editor.ts')],
  outfile: path.join(tmp, 'in-editor.cjs'),
  ...{ bundle: true, platform: 'node', format: 'cjs', external: ['vscode'] },
});
const load = () =>
  os
    .loadavg()
    .map(n => n.toFixed(1))
    .join(', ');
console.log(
  `${os.cpus().length} cores, load before ${load()}; VS Code's server with its window in Chromium beside it`,
);
for (const [name, measure] of Object.entries(measures))
  if (name.includes(values.only)) {
    await measure(path.join(tmp, name));
    console.log(`  load afterwards ${load()}`);
  }
fs.rmSync(tmp, { recursive: true, force: true, maxRetries: 5 });
