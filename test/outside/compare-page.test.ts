import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
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
    const image = async (background: string) => ({
      type: 'image/png' as const,
      bytes: await sharp({ create: { width: 60, height: 40, channels: 3, background } })
        .png()
        .toBuffer(),
      fullWidth: 60,
      fullHeight: 40,
    });
    const [black, white] = [await image('#000'), await image('#fff')];
    const changed = change('changed', 'a.tif', [page(picture('a.tif'), picture('a.tif'))]);
    file = path.join(fs.mkdtempSync('/tmp/evengrey-page-'), 'page.html');
    fs.writeFileSync(
      file,
      comparisonPage(comparison([changed]), side => (side === 'base' ? black : white)),
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

  /** Shares (0-1) of black and white in what is seen of the two pictures. */
  async function seen(tab: Awaited<ReturnType<typeof opened>>['tab']) {
    const { data, info } = await sharp(await tab.locator('.over').screenshot())
      .greyscale()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const share = (of: number) => data.filter(value => value === of).length / (info.width * info.height);
    return share(255) / (share(0) + share(255));
  }

  it('wipes the picture over what it was, by hand and by keyboard', async () => {
    const { tab, complaints } = await opened(true);
    const slider = tab.locator('.slider input');
    await slider.fill('25');
    assert.ok(Math.abs((await seen(tab)) - 0.75) < 0.05);
    await slider.focus();
    await tab.keyboard.press('Home');
    assert.ok((await seen(tab)) > 0.95, 'all of it after');
    assert.deepEqual(complaints, []);
  });

  it('shows both side by side where no script runs', async () => {
    const { tab, complaints } = await opened(false);
    const [before, after] = await tab.locator('.over figure').all();
    const [x, y] = [(await before.boundingBox())!, (await after.boundingBox())!];
    assert.ok(y.x >= x.x + x.width && Math.abs(x.y - y.y) < 1);
    assert.equal(await tab.locator('.slider').isVisible(), false);
    assert.deepEqual(complaints, []);
  });

  it('prints both, without the slider', async () => {
    const { tab } = await opened(true);
    await tab.emulateMedia({ media: 'print' });
    assert.equal(await tab.locator('.slider').isVisible(), false);
    assert.equal(await tab.locator('.over figcaption').first().isVisible(), true);
  });
});
