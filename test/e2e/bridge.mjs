// Hands for the tests: they run in the extension host and see no window, so they ask this process, which drives the
// window with Playwright, over HTTP on this machine. test/e2e/window.ts is the other end.
import fs from 'node:fs';
import http from 'node:http';
import { createRequire } from 'node:module';
import path from 'node:path';

const patience = 20_000;

/** `window.page`: the Playwright page, set by the time the first test asks. `shots`: folder for screenshots. */
export async function startBridge(window, shots) {
  const server = http.createServer(async (request, response) => {
    let body = '';
    for await (const chunk of request) body += chunk;
    const answer = (status, value) => response.writeHead(status).end(JSON.stringify(value));
    try {
      const operation = operations[request.url.slice(1)];
      if (!operation) throw new Error(`no operation ${request.url}`);
      answer(200, { result: await operation(window.page, JSON.parse(body), shots) });
    } catch (error) {
      answer(500, { error: String(error?.message ?? error) });
    }
  });
  await new Promise(resolve => server.listen(0, '127.0.0.1', resolve));
  function close() {
    server.close();
    server.closeAllConnections();
  }
  return { url: `http://127.0.0.1:${server.address().port}`, close };
}

const operations = {
  /** Saves the window as a PNG; toasts and hovers get the time to fade in. */
  async screenshot(page, { name, width = 1400, height = 900 }, shots) {
    await page.setViewportSize({ width, height });
    await page.waitForTimeout(700);
    const file = path.join(shots, `${name}.png`);
    await page.screenshot({ path: file });
    return file;
  },

  /** Text of the first visible `selector` in any webview, once it matches `until`. */
  async webviewText(page, { selector, until = '' }) {
    const matching = asked(until, selector);
    return eventually(async () => {
      const element = await inWebviews(page, selector);
      const text = element && (await element.evaluate(shownText));
      return matching.find(text ? [text] : []);
    }, matching.told);
  },

  async webviewCount(page, { selector }) {
    const counts = await Promise.all(
      webviews(page).map(f =>
        f
          .locator(selector)
          .count()
          .catch(() => 0),
      ),
    );
    return counts.reduce((sum, n) => sum + n, 0);
  },

  /** `how`: as Playwright's `click` takes it, such as modifiers and the number of clicks. */
  async webviewClick(page, { selector, how = {} }) {
    const element = await eventually(() => inWebviews(page, selector), selector);
    await element.click(how);
  },

  /** What an accessibility scan (axe-core) says against the page that has a visible `selector`. */
  async webviewAxe(page, { selector }) {
    const element = await eventually(() => inWebviews(page, selector), selector);
    const frame = await (await element.elementHandle()).ownerFrame();
    await frame.evaluate(axeSource());
    const { violations } = await frame.evaluate('axe.run(document, { resultTypes: ["violations"] })');
    return violations.map(({ id, impact, help, nodes }) => ({
      ...{ id, impact, help },
      nodes: nodes.map(({ html, failureSummary }) => `${html.slice(0, 200)} ${failureSummary}`),
    }));
  },

  async webviewSelect(page, { selector, value }) {
    const element = await eventually(() => inWebviews(page, selector), selector);
    await element.selectOption(value);
  },

  /** Value of a JavaScript expression with `element` bound to the first visible `selector`. */
  async webviewEval(page, { selector, expression }) {
    const element = await eventually(() => inWebviews(page, selector), selector);
    return element.evaluate(new Function('element', `return (${expression})`));
  },

  /** Text of the first `selector` of the workbench itself, once it matches `until`; `within`: in ms. */
  async workbenchText(page, { selector, until = '', within }) {
    const matching = asked(until, selector);
    const look = async () => matching.find(await page.locator(selector).allInnerTexts());
    return eventually(look, matching.told, within);
  },

  async workbenchClick(page, { selector, text }) {
    await page
      .locator(selector, text ? { hasText: text } : {})
      .first()
      .click({ timeout: patience });
  },

  /**
   * Presses a message's button, which takes the message away, in one that shows itself or in the list of all (`among`).
   * By the keyboard: a message moves as the one below it goes, and a click in that moment is lost.
   */
  async toastPress(page, { text, among, within }) {
    const button = page.locator(`${among} .monaco-button`, { hasText: text }).first();
    await button.press('Enter', { timeout: within });
    await button.waitFor({ state: 'hidden', timeout: patience });
  },

  /** Opens the menu of the first `selector` with that text. */
  async workbenchMenu(page, { selector, text }) {
    await page
      .locator(selector, text ? { hasText: text } : {})
      .first()
      .click({ button: 'right', timeout: patience });
    // a menu takes no click in its first moments, lest the one that opened it choose
    await page.waitForTimeout(500);
  },

  /** Drags from the middle of a webview's `selector` by so many pixels. */
  async webviewDrag(page, { selector, dx, dy }) {
    const element = await eventually(() => inWebviews(page, selector), selector);
    await element.scrollIntoViewIfNeeded();
    const { x, y, width, height } = await element.boundingBox();
    await page.mouse.move(x + width / 2, y + height / 2);
    await page.mouse.down();
    await page.mouse.move(x + width / 2 + dx, y + height / 2 + dy, { steps: 5 });
    await page.mouse.up();
  },

  /** Points at a place of a webview's `selector`, pixels from its upper left, and turns the wheel there where told. */
  async webviewPoint(page, { selector, x, y, wheel, ctrl }) {
    const element = await eventually(() => inWebviews(page, selector), selector);
    await element.scrollIntoViewIfNeeded();
    const box = await element.boundingBox();
    await page.mouse.move(box.x + x, box.y + y);
    if (!wheel) return;
    if (ctrl) await page.keyboard.down('Control');
    await page.mouse.wheel(0, wheel);
    if (ctrl) await page.keyboard.up('Control');
  },

  /** Points at the first `selector` of the workbench with that text, and stays there. */
  async workbenchHover(page, { selector, text }) {
    const element = page.locator(selector, text ? { hasText: text } : {}).first();
    // a hover comes to a pointer that comes to rest
    await element.hover({ timeout: patience });
    await element.hover({ position: { x: 6, y: 6 } });
  },

  /** Value of a JavaScript expression with `element` bound to the first visible `selector` of the workbench. */
  async workbenchEval(page, { selector, expression }) {
    const element = page.locator(selector).first();
    await element.waitFor({ timeout: patience });
    return element.evaluate(new Function('element', `return (${expression})`));
  },

  async type(page, { text }) {
    await page.keyboard.type(text);
  },

  async press(page, { key }) {
    await page.keyboard.press(key);
  },
};

const axeSource = () =>
  fs.readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What a person sees of it: hidden parts left out. */
// biome-ignore lint/performance/useDomNodeTextContent: hidden parts are the point
const shownText = element => element.innerText;

/** Frames inside frames: the workbench, its webview host, the page itself. */
const webviews = page => page.frames().filter(frame => frame !== page.mainFrame());

async function inWebviews(page, selector) {
  for (const frame of webviews(page)) {
    const element = frame.locator(selector).first();
    if (await element.isVisible().catch(() => false)) return element;
  }
}

/** A text that is waited for; where it never comes, what stood there last is told. */
function asked(until, selector) {
  // what was there and went again tells most
  const seen = new Set();
  return {
    find(texts) {
      for (const text of texts) seen.add(text);
      return texts.find(text => new RegExp(until).test(text));
    },
    told: () => `text matching /${until}/ in ${selector}; there was ${JSON.stringify([...seen])}`,
  };
}

async function eventually(look, what, within = patience) {
  const end = Date.now() + within;
  for (;;) {
    const found = await look();
    if (found !== undefined) return found;
    if (Date.now() > end)
      throw new Error(`waited ${within / 1000} s for ${typeof what === 'string' ? what : what()}`);
    await new Promise(resolve => setTimeout(resolve, 100));
  }
}
