// The one command behind `npm test`: everything that must hold, in the order of its cost. Runs without stdin. The
// last line is the sum of all suites; the exit code is 0 only if each of them ran to its end without a failure.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { runEditorSuites } from './e2e/run.mjs';
import { installServer } from './e2e/server/install.mjs';
import { chromium } from './e2e/workbench.mjs';
import { readCounts } from './tools/counts.mjs';
import { ensurePackages, installHint } from './tools/packages.mjs';

process.chdir(path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..'));
const results = [];

function start(name) {
  console.log(`\n── ${name}`);
  return Date.now();
}

function finish(name, since, passed, failed, note = '') {
  const seconds = ((Date.now() - since) / 1000).toFixed(1);
  results.push({ name, passed, failed });
  console.log(`   ${name}: ${passed} passed, ${failed} failed ${note ? `(${note}) ` : ''}in ${seconds} s`);
}

/** A step that is right or wrong as a whole: only its failure counts. */
function step(name, ...commands) {
  const since = start(name);
  const ok = commands.every(
    ([program, ...args]) =>
      spawnSync(program, args, { stdio: ['ignore', 'inherit', 'inherit'] }).status === 0,
  );
  finish(name, since, 0, ok ? 0 : 1);
  return ok;
}

function mochaSuite(name, args) {
  const since = start(name);
  const dir = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-mocha-'));
  const RESULT_FILE = path.join(dir, 'counts.json');
  spawnSync('npx', ['mocha', '--reporter', 'test/tools/counting-reporter.cjs', ...args], {
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, RESULT_FILE },
  });
  const { passed, failed, note } = readCounts(RESULT_FILE);
  fs.rmSync(dir, { recursive: true });
  finish(name, since, passed, failed, note);
}

async function editorSuite(name, server) {
  const since = start(name);
  try {
    if (!fs.existsSync(chromium)) throw new Error(`missing: ${chromium} (or name another in CHROMIUM)`);
    const suites = runEditorSuites({ code: await server });
    for await (const { label, since, passed, failed, note } of suites)
      finish(`${name}, ${label}`, since, passed, failed, note);
  } catch (error) {
    console.error(`the editor's suite cannot run: ${error.message}`);
    finish(name, since, 0, 1);
  }
}

const missing = ensurePackages();
if (missing.length) console.error(installHint(missing));
const server = installServer();
server.catch(() => {}); // told where it is awaited

if (step('build', ['node', 'build.mjs', '--tests'])) {
  step('type check', ['npx', 'tsc', '-p', '.'], ['npx', 'tsc', '-p', 'src/preview']);
  step('lint', ['npx', 'biome', 'check', '.']);
  mochaSuite('unit and golden tests', ['out/test/**/*.test.js', '--ignore', 'out/test/e2e/**']);
  await editorSuite('editor', server);
}

const passed = results.reduce((sum, r) => sum + r.passed, 0);
const failed = results.reduce((sum, r) => sum + r.failed, 0);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed ? 1 : 0;
