import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import type axe from 'axe-core';
import { type Browser, chromium } from 'playwright-core';
import sharp from 'sharp';
import { comparisonPage } from '../../src/report/compare/page';
import { change, comparison, page } from '../report/compare/support';
import { picture } from '../report/text/support';
import { need } from '../tools/need';

/** The page of a comparison as a browser shows it, with the network off. */
describe('a comparison’s page in a browser', function () {
  this.timeout(60_000);
  let browser: Browser;
  let file: string;

  before(async () => {
    browser = await chromium.launch({
      executablePath: process.env.CHROMIUM ?? need('/usr/bin/chromium', 'chromium'),
      args: ['--no-sandbox', '--disable-gpu'],
    });
    const image = async (background: string, width: number, height: number) => ({
      type: 'image/png' as const,
      bytes: await sharp({ create: { width, height, channels: 3, background } })
        .png()
        .toBuffer(),
      fullWidth: width,
      fullHeight: height,
    });
    const black = await image('#000', 120, 80);
    const white = { 'smaller.tif': await image('#fff', 60, 40), 'cropped.tif': await image('#fff', 120, 60) };
    const neighbours = { before: 'before.tif', after: 'after.tif', beside: ['after.tif'] };
    const changes = Object.keys(white).map(name =>
      change('changed', name, [page(picture(name), picture(name))], { neighbours }),
    );
    file = path.join(fs.mkdtempSync('/tmp/evengrey-page-'), 'page.html');
    fs.writeFileSync(
      file,
      comparisonPage(comparison(changes), { place: { folder: '', settings: null } }, (side, name) =>
        side === 'base' ? black : white[name as keyof typeof white],
      ),
    );
  });
  after(async () => {
    await browser?.close();
    fs.rmSync(path.dirname(file), { recursive: true, force: true });
  });

  async function opened(javaScriptEnabled: boolean) {
    const context = await browser.newContext({ javaScriptEnabled, offline: true });
    const tab = await context.newPage();
    const complaints: string[] = [];
    tab.on('console', message => complaints.push(message.text()));
    tab.on('pageerror', error => complaints.push(String(error)));
    await tab.goto(`file://${file}`);
    return { tab, complaints };
  }

  type Tab = Awaited<ReturnType<typeof opened>>['tab'];

  /** Share (0-1) of white, which is after, in the whole box of the picture before. */
  async function seen(tab: Tab) {
    const clip = (await tab.locator('.over img').first().boundingBox())!;
    const { data, info } = await sharp(await tab.screenshot({ clip }))
      .greyscale()
      .raw()
      .toBuffer({ resolveWithObject: true });
    return data.filter(value => value === 255).length / (info.width * info.height);
  }

  /** The words under the pictures that are not cut off whole. */
  const words = (tab: Tab) =>
    tab.evaluate<string[]>(
      `[...document.querySelectorAll('.over figure')]
        .filter(figure => !getComputedStyle(figure).clipPath.includes('100%'))
        .map(figure => figure.textContent)`,
    );

  it('wipes a smaller picture over what it was, whole over whole: before lies left, after right', async () => {
    const { tab, complaints } = await opened(true);
    const slider = tab.locator('.slider input');
    await slider.fill('25');
    assert.ok(Math.abs((await seen(tab)) - 0.75) < 0.05);
    const { data, info } = await sharp(
      await tab.screenshot({ clip: (await tab.locator('.over img').first().boundingBox())! }),
    )
      .greyscale()
      .raw()
      .toBuffer({ resolveWithObject: true });
    // within the edges, which may lie on half a pixel
    const row = info.width * (info.height >> 1);
    assert.deepEqual([data[row + 2], data[row + info.width - 3]], [0, 255]);
    await slider.focus();
    await tab.keyboard.press('Home');
    assert.ok((await seen(tab)) > 0.95, 'all of it after');
    assert.deepEqual(await words(tab), ['After']);
    await tab.keyboard.press('End');
    assert.ok((await seen(tab)) < 0.05, 'all of it before');
    assert.deepEqual(await words(tab), ['Before']);
    assert.deepEqual(complaints, []);
  });

  it('lays nothing of another shape over it: both stand side by side', async () => {
    const { tab } = await opened(true);
    const cropped = tab.locator('.change', { hasText: 'cropped.tif' });
    assert.equal(await cropped.locator('.slider').count(), 0);
    const [x, y] = await Promise.all(
      (await cropped.locator('.sides figure').all()).map(figure => figure.boundingBox()),
    );
    assert.ok(y!.x >= x!.x + x!.width);
  });

  it('keeps side by side on a phone what is to be compared', async () => {
    const { tab } = await opened(true);
    await tab.setViewportSize({ width: 390, height: 800 });
    const cropped = tab.locator('.change', { hasText: 'cropped.tif' });
    const tops = async (selector: string) =>
      Promise.all((await cropped.locator(selector).all()).map(async each => (await each.boundingBox())!.y));
    for (const [selector, many] of [
      ['.sides figure', 2],
      ['.neighbours li', 3],
    ] as const) {
      const all = await tops(selector);
      assert.equal(all.length, many);
      assert.equal(new Set(all).size, 1, `${selector}: ${all}`);
    }
    assert.equal(await tab.evaluate('document.documentElement.scrollWidth'), 390);
  });

  it('shows both side by side and equally large where no script runs', async () => {
    const { tab, complaints } = await opened(false);
    const [before, after] = await tab.locator('.over img').all();
    const [x, y] = [(await before.boundingBox())!, (await after.boundingBox())!];
    assert.ok(y.x >= x.x + x.width && Math.abs(x.y - y.y) < 1);
    assert.deepEqual([y.width, y.height], [x.width, x.height]);
    assert.equal(await tab.locator('.slider').isVisible(), false);
    assert.deepEqual(complaints, []);
  });

  for (const colorScheme of ['light', 'dark'] as const)
    it(`can be read in ${colorScheme}: its words stand out from their ground by what WCAG 2.2 asks for (1.4.3)`, async () => {
      const context = await browser.newContext({ colorScheme, offline: true });
      const tab = await context.newPage();
      await tab.goto(`file://${file}`);
      await tab.evaluate(fs.readFileSync('node_modules/axe-core/axe.min.js', 'utf8'));
      const { violations, passes } = await tab.evaluate<axe.AxeResults>(
        `axe.run(document, { runOnly: ['color-contrast'] })`,
      );
      const against = violations.flatMap(({ nodes }) => nodes.map(node => node.failureSummary));
      assert.deepEqual(against, []);
      const looked = passes.flatMap(({ nodes }) => nodes.map(({ html }) => html));
      assert.ok(looked.includes('<small>on the same spread</small>'));
    });

  it('prints both, without the slider', async () => {
    const { tab } = await opened(true);
    await tab.emulateMedia({ media: 'print' });
    assert.equal(await tab.locator('.slider').isVisible(), false);
    assert.equal(await tab.locator('.over figcaption').first().isVisible(), true);
  });
});
