// What the extension host is told to run by editor.mjs: one measurement, named by BENCH_MEASURE, on the workspace that
// is open. Its figures go as JSON into the file BENCH_RESULT.
import { fork } from 'node:child_process';
import fs from 'node:fs';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import * as vscode from 'vscode';
import { extension, inWorkspace, rulesOn, sleep } from '../e2e/editor';
import { ourProcesses } from '../e2e/processes';
import { workbenchText } from '../e2e/window';

const { BENCH_MEASURE, BENCH_RESULT, BENCH_ROUNDS, BENCH_REST, BENCH_PICTURE, BENCH_BUSY } =
  process.env as Record<string, string>;
const rounds = Number(BENCH_ROUNDS);
const PLATE = 'plate.jpg';

export async function run() {
  await extension().activate();
  const figures = await measures[BENCH_MEASURE]();
  fs.writeFileSync(BENCH_RESULT, JSON.stringify(figures));
}

const measures: Record<string, () => Promise<object>> = { delay, activation, save };

/** How late the extension host comes to its turn, in ms: at rest, beside busy strangers, while a book is read. */
async function delay() {
  const rest = await delayDuring(() => sleep(5000));
  const strangers = [1, 2].map(() => fork(BENCH_BUSY, { execArgv: [] }));
  const busy = await delayDuring(() => sleep(10_000));
  for (const stranger of strangers) stranger.kill();
  const reading = await delayDuring(() => vscode.commands.executeCommand('evengrey.check'));
  return { rest, busy, reading, found: vscode.languages.getDiagnostics().length };
}

async function delayDuring(work: () => PromiseLike<unknown>) {
  const histogram = monitorEventLoopDelay({ resolution: 1 });
  const before = process.cpuUsage();
  const since = performance.now();
  histogram.enable();
  await work();
  histogram.disable();
  const { user, system } = process.cpuUsage(before);
  const ms = (nanoseconds: number) => nanoseconds / 1e6;
  return {
    half: ms(histogram.percentile(50)),
    p99: ms(histogram.percentile(99)),
    most: ms(histogram.max),
    seconds: (performance.now() - since) / 1000,
    /** Of one core, of all that lives in this process. */
    load: (user + system) / 1000 / (performance.now() - since),
  };
}

/** What the editor itself says of our activation. */
async function activation() {
  await vscode.commands.executeCommand('workbench.action.showRuntimeExtensions');
  return { says: await workbenchText('.runtime-extensions-editor .monaco-list-row', /evengrey/) };
}

/** From a picture's being whole on the disk to its finding in the Problems panel, in ms. */
async function save() {
  await until(() => refused('first.jpg'));
  const several = async (what: string, count: number, prepare: () => unknown) => {
    const times: number[] = [];
    while (times.length < count) {
      await prepare();
      times.push(await saved(`${what} ${times.length}`));
    }
    return times;
  };
  const warm = await several('warm', rounds, () => {});
  let staying: object[] = [];
  const rested = await several('rested', Math.ceil(rounds / 2), async () => {
    await sleep(Number(BENCH_REST) * 1000);
    staying = ourProcesses().map(memoryOf);
  });
  const opened = await several('opened', rounds, async () => {
    endAll();
    await vscode.commands.executeCommand('evengrey.check');
    await sleep(3000);
  });
  const cold = await several('cold', rounds, endAll);
  return { warm, rested, staying, opened, cold };
}

/** What a process holds, in MB: all of it, and what it shares with others by its part. */
function memoryOf({ pid, command }: { pid: number; command: string }) {
  const rollup = fs.readFileSync(`/proc/${pid}/smaps_rollup`, 'utf8');
  const mb = (what: string) => Number(new RegExp(`^${what}: +(\\d+)`, 'm').exec(rollup)?.[1]) / 1024;
  return { name: /(\w+)\.js/.exec(command)?.[1], resident: mb('Rss'), proportional: mb('Pss') };
}

/**
 * Puts a picture of 12 megapixels with a finding in the place of a small one without, and takes it away again.
 * `content`: goes into the file, or the cache would know it.
 */
async function saved(content: string): Promise<number> {
  const plate = inWorkspace(PLATE).fsPath;
  const part = `${plate}.part`;
  fs.writeFileSync(part, Buffer.concat([fs.readFileSync(BENCH_PICTURE), Buffer.from(content)]));
  await sleep(1000);
  const found = until(() => refused(PLATE));
  const since = performance.now();
  fs.renameSync(part, plate);
  const ms = (await found) - since;
  fs.copyFileSync(inWorkspace('last.jpg').fsPath, plate);
  await until(() => !refused(PLATE));
  await sleep(500);
  return ms;
}

/** By the settings of the workspace the house takes no RGB. */
const refused = (file: string) => rulesOn(file).includes('encoding-not-accepted');

/** The time at which diagnostics made something true. */
function until(isSo: () => boolean): Promise<number> {
  return new Promise(resolve => {
    const look = () => {
      if (!isSo()) return;
      listening.dispose();
      resolve(performance.now());
    };
    const listening = vscode.languages.onDidChangeDiagnostics(look);
    look();
  });
}

/** As in an editor that has not read anything yet. */
function endAll() {
  for (const { pid } of ourProcesses()) process.kill(pid, 'SIGKILL');
}
