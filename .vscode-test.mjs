// The suites that run inside VS Code: `npx vscode-test` on a desktop, test/e2e/run.mjs without a screen.
import { defineConfig } from '@vscode/test-cli';
import { makeWorkspaces } from './test/e2e/workspaces.mjs';

const workspaces = await makeWorkspaces('out/workspaces');

const suite = label => ({
  label,
  files: `out/test/e2e/suites/${label}/**/*.test.js`,
  workspaceFolder: workspaces[label],
  mocha: { ui: 'bdd', timeout: 60_000 },
  launchArgs: ['--disable-extensions'],
  // an editor of your own: VSCODE_PATH=/path/to/code
  ...(process.env.VSCODE_PATH ? { useInstallation: { fromPath: process.env.VSCODE_PATH } } : {}),
});

export default defineConfig([
  suite('book'),
  suite('convert'),
  suite('fixes'),
  suite('layout'),
  suite('overview'),
  suite('no-book'),
  suite('review'),
  suite('start'),
  suite('screen'),
]);
