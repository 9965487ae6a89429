// The suites that test a package as a user has it: installed from its VSIX, nothing of the working tree in reach.
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { builtPackages } from '../tools/built-packages.mjs';

const here = path.dirname(fileURLToPath(import.meta.url));

/** An empty extension under development. */
export const driver = path.join(here, 'driver');

/**
 * One suite a package; the one for every platform in a workspace that nobody has said to trust. `developed`: suites of
 * the working tree that are to be run with the packages too: `installed-book` is that of books with the package for this
 * platform, `installed-universal-book` with the one for every platform.
 */
export function installedSuites(root, developed) {
  const packages = builtPackages(path.join(root, 'out/packages'));
  const withPackage = (prefix, vsix) =>
    developed.map(suite => ({ ...suite, label: `${prefix}-${suite.label}`, vsix }));
  return [
    ...ofPackages(packages),
    ...withPackage('installed', packages['linux-x64']),
    ...withPackage('installed-universal', packages.universal),
  ];
}

function ofPackages(packages) {
  return Object.entries(packages).map(([target, vsix]) => ({
    label: `installed-${target}`,
    files: 'out/test/e2e/suites/installed/**/*.test.js',
    workspaceFolder: 'out/workspaces/installed',
    mocha: { ui: 'bdd', timeout: 120_000 },
    vsix,
    env: { E2E_PACKAGE: target },
    settings: target === 'universal' ? untrusted : {},
  }));
}

const untrusted = {
  'security.workspace.trust.enabled': true,
  'security.workspace.trust.startupPrompt': 'never',
};

/** Whether labels are wanted by `only`; a package is made for no other. */
export const wantsInstalled = only => !only || only.startsWith('installed');
