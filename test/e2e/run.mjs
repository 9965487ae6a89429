// Runs the suites of .vscode-test.mjs in a real VS Code without a screen: its server and node extension host, its
// workbench in headless Chromium. The same list serves `vscode-test` on a desktop. After them the packages, installed.
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import picomatch from 'picomatch';
import { readCounts } from '../tools/counts.mjs';
import { startBridge } from './bridge.mjs';
import { driver, installedSuites, wantsInstalled } from './installed.mjs';
import { installServer } from './server/install.mjs';
import { translatedSuites } from './translated.mjs';
import { startServer } from './vscode-server.mjs';
import { openWorkbench } from './workbench.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const shots = path.join(root, 'screenshots');
const longest = Number(process.env.E2E_TIMEOUT_MS ?? 240_000);

/**
 * Runs every suite, one after the other, each with a server, profile and window of its own, and yields what came of it:
 * `{label, since, passed, failed, note}`; `since`: when it began, in ms.
 * `code`: folder of the VS Code server. `only`: label of the one suite to run.
 */
export async function* runEditorSuites({ code, only }) {
  fs.mkdirSync(shots, { recursive: true });
  const { default: config } = await import(pathToFileURL(path.join(root, '.vscode-test.mjs')));
  const wanted = suites => suites.filter(suite => !only || suite.label === only);
  for (const suite of wanted([config, translatedSuites(root)].flat())) yield await timed(code, suite);
  if (!wantsInstalled(only)) return;
  for (const suite of wanted(installedSuites(root, only ? [config].flat() : [])))
    yield await timed(code, suite);
}

async function timed(code, suite) {
  const since = Date.now();
  return { label: suite.label, since, ...(await runSuite(code, suite)) };
}

async function runSuite(code, suite) {
  const tmp = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-e2e-'));
  const resultFile = path.join(tmp, 'counts.json');
  const report = follow(path.join(tmp, 'report.txt'));
  const log = fs.createWriteStream(path.join(shots, `${suite.label}.log`));
  const window = {}; // the bridge is there before the page that it drives
  const bridge = await startBridge(window, shots);
  let server;
  let note = '';
  try {
    server = await startServer({
      code,
      tmp,
      log,
      env: { ...testEnvironment(suite, bridge.url, resultFile, report.file), ...suite.env },
      vsix: suite.vsix,
      more: suite.settings,
    });
    const workbench = await openWorkbench({
      server,
      log,
      workspace: path.resolve(root, suite.workspaceFolder),
      development: suite.vsix ? driver : (suite.development?.() ?? root),
      language: suite.language,
      tests: path.join(root, 'test/e2e/runner.cjs'),
    });
    window.page = workbench.page;
    note = await Promise.race([
      workbench.finished.then(() => ''),
      server.died.then(why => `the server ended early: ${why}`),
      after(longest, `not finished after ${longest / 1000} s`),
    ]);
    if (note)
      await workbench.page.screenshot({ path: path.join(shots, `${suite.label}-stuck.png`) }).catch(() => {});
    const outside = workbench.outsideRequests();
    if (outside.length) note ||= `the window asked the network for ${outside.join(', ')}`;
    await workbench.close();
  } catch (error) {
    note = error.stack;
  } finally {
    await server?.stop();
    bridge.close();
    report.stop();
    log.end();
  }
  const counts = readCounts(resultFile);
  if (note && !counts.failed) counts.failed = 1;
  if (!process.env.KEEP) fs.rmSync(tmp, { recursive: true, force: true, maxRetries: 5 });
  return { ...counts, note: [note, counts.note].filter(Boolean).join('; ') };
}

/** What test-cli's own runner expects, and where our reporter and the tests find the rest. */
function testEnvironment(suite, bridgeUrl, resultFile, reportFile) {
  const wanted = picomatch(suite.files);
  const files = fs
    .readdirSync(path.join(root, 'out'), { recursive: true })
    .map(file => `out/${file}`)
    .filter(file => wanted(file));
  if (!files.length) throw new Error(`no test file matches ${suite.files}`);
  return {
    E2E_BRIDGE_URL: bridgeUrl,
    RESULT_FILE: resultFile,
    REPORT_FILE: reportFile,
    VSCODE_TEST_OPTIONS: JSON.stringify({
      mochaOpts: { ...suite.mocha, reporter: path.join(root, 'test/tools/counting-reporter.cjs') },
      colorDefault: Boolean(process.stdout.isTTY),
      preload: [],
      files: files.map(f => path.join(root, f)),
    }),
  };
}

/** Prints what is written to a file by another process, as it comes. */
function follow(file) {
  let printed = 0;
  const drain = () => {
    if (!fs.existsSync(file)) return;
    const text = fs.readFileSync(file);
    process.stdout.write(text.subarray(printed));
    printed = text.length;
  };
  const timer = setInterval(drain, 200);
  return {
    file,
    stop() {
      clearInterval(timer);
      drain();
    },
  };
}

const after = (ms, value) => new Promise(resolve => setTimeout(resolve, ms, value).unref());

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { values } = parseArgs({ options: { only: { type: 'string' } } });
  for await (const result of runEditorSuites({ code: await installServer(), only: values.only })) {
    const { label, passed, failed, note } = result;
    console.log(`${label}: ${passed} passed, ${failed} failed ${note}`);
    if (failed) process.exitCode = 1;
  }
}
