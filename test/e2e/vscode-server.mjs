// The VS Code server of one test run: own profile, own extensions folder, a free port of this machine.
import { execFile, spawn } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { promisify } from 'node:util';

const settings = {
  'security.workspace.trust.enabled': false,
  // as on a desktop
  'files.autoSave': 'off',
  'workbench.startupEditor': 'none',
  'workbench.enableExperiments': false,
  'workbench.tips.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'chat.disableAIFeatures': true,
  'git.enabled': false,
};

/**
 * `code`: the server's folder. `tmp`: a folder that the caller removes. `env`: for the extension host too. `vsix`: a
 * package that is installed first. `more`: settings beside the usual ones.
 * Returns the `port`, a promise of why it `died` if it does, and `stop()`.
 */
export async function startServer({ code, tmp, log, env, vsix, more = {} }) {
  const data = path.join(tmp, 'data');
  fs.mkdirSync(path.join(data, 'User'), { recursive: true });
  fs.writeFileSync(path.join(data, 'User/settings.json'), JSON.stringify({ ...settings, ...more }, null, 2));

  const cache = path.join(tmp, 'cache');
  const environment = { ...process.env, EXTENSIONS_GALLERY: '{}', EVENGREY_CACHE_DIR: cache, ...env };
  // each would make it believe that it runs inside another VS Code
  for (const name of ['CODE_SERVER_PARENT_PID', 'NODE_OPTIONS', 'VSCODE_IPC_HOOK_CLI'])
    delete environment[name];
  const program = path.join(code, 'out/server-main.js');
  const common = ['--accept-server-license-terms', '--server-data-dir', tmp, '--user-data-dir', data];
  common.push('--extensions-dir', path.join(tmp, 'extensions'), '--telemetry-level', 'off');
  const install = [program, ...common, '--install-extension', vsix];
  if (vsix) await promisify(execFile)(process.execPath, install, { env: environment });
  const address = ['--host', '127.0.0.1', '--port', '0', '--without-connection-token'];
  const child = spawn(process.execPath, [program, ...address, ...common], {
    env: environment,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const died = new Promise(resolve =>
    child.once('exit', (status, signal) => resolve(`exit ${status ?? signal}`)),
  );
  child.stderr.pipe(log, { end: false });

  const listening = new Promise(resolve => {
    let text = '';
    child.stdout.on('data', chunk => {
      log.write(chunk);
      text += chunk;
      const port = /Extension host agent listening on (\d+)/.exec(text);
      if (port) resolve(Number(port[1]));
    });
  });
  const port = await Promise.race([
    listening,
    died.then(why => {
      throw new Error(`the VS Code server did not start: ${why}`);
    }),
  ]);

  async function stop() {
    child.kill('SIGTERM');
    const hard = setTimeout(() => child.kill('SIGKILL'), 3000);
    await died;
    clearTimeout(hard);
  }
  return { port, died, stop };
}
