// The VS Code window of one test run, in headless Chromium. Opening it starts the tests: the page's payload names
// the extension under development and the test runner, and the extension host loads both.
import util from 'node:util';
import playwright from 'playwright-core';

/** The browser whose window the workbench runs in. */
export const chromium = process.env.CHROMIUM ?? '/usr/bin/chromium';

/**
 * Opens `workspace` with the extension in the folder `development` and runs `tests` (all absolute paths). `language`: of
 * the editor; English where none is given.
 * Returns the Playwright `page`, a promise of the run's end `finished`, `outsideRequests()`: addresses beyond this
 * machine that anything in the window asked for, and `close()`.
 */
export async function openWorkbench({ server, log, workspace, development, tests, language }) {
  const browser = await playwright.chromium.launch({
    executablePath: chromium,
    args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage', '--disable-background-networking'],
  });
  const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  const page = await context.newPage();
  // where the workbench asks for it; its own words stay English
  if (language) await page.addInitScript(`globalThis._VSCODE_NLS_LANGUAGE = ${JSON.stringify(language)}`);

  // only this very host name is a secure context; with any other every webview fails
  const origin = `127.0.0.1:${server.port}`;
  const outside = new Set();
  context.on('request', request => {
    const { protocol, host } = new URL(request.url());
    // a webview's own files have an address that its service worker answers
    if (host === origin || host.endsWith('.vscode-resource.vscode-cdn.net')) return;
    if (/^(https?|wss?):$/.test(protocol)) outside.add(request.url());
  });
  page.on('console', message => log.write(`[${message.type()}] ${message.text()}\n`));
  page.on('pageerror', error => log.write(`[page error] ${error.stack}\n`));

  // the two functions that a workbench under test calls: its log, and its end
  await page.exposeFunction('codeAutomationLog', (type, args) => {
    log.write(`[${type}] ${util.format(...args)}\n`);
  });
  const finished = new Promise((resolve, reject) => {
    void page.exposeFunction('codeAutomationExit', status => resolve(status));
    page.once('crash', () => reject(new Error('the window crashed')));
    browser.once('disconnected', () => reject(new Error('the browser ended')));
  });
  finished.catch(() => {}); // the caller races it

  const remote = file => `vscode-remote://${origin}${encodeURI(file)}`;
  const payload = JSON.stringify([
    ['extensionDevelopmentPath', remote(development)],
    ['extensionTestsPath', remote(tests)],
    ['skipWelcome', 'true'],
    ['skipReleaseNotes', 'true'],
  ]);
  const query = new URLSearchParams({ folder: workspace, payload });
  await page.goto(`http://${origin}/?${query}`);

  return { page, finished, outsideRequests: () => [...outside], close: () => browser.close() };
}
