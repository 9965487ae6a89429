import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import sharp from 'sharp';
import { bookPage } from '../../src/report/page/book-page';
import type { Image } from '../../src/report/page/image';
import { temporaryFolder } from '../book/support/folder';
import { finding, picture, report } from '../report/text/support';
import { need } from '../tools/need';

/** The page of a book of two pictures, as a browser lays it out. */
describe('a book’s page in a browser', function () {
  this.timeout(60_000);
  let browser: Browser;
  let page: string;

  before(async () => {
    browser = await chromium.launch({
      executablePath: process.env.CHROMIUM ?? need('/usr/bin/chromium', 'chromium'),
      args: ['--no-sandbox', '--disable-gpu'],
    });
    const bytes = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#888' } })
      .png()
      .toBuffer();
    const image: Image = { type: 'image/png', bytes, fullWidth: 60, fullHeight: 40 };
    const shown = { small: image, large: image };
    page = bookPage('Two', report([picture('plates/first.png'), picture('second.png')]), [shown, shown]);
  });
  after(() => browser?.close());

  /** Where the advice and the picture of the first sheet lie in a window of this width. */
  async function placed(width: number) {
    const tab = await browser.newPage({ viewport: { width, height: 900 } });
    await tab.setContent(page);
    const box = async (of: string) => (await tab.locator(`#picture-1 ${of}`).boundingBox())!;
    const boxes = { advice: await box('.advice'), picture: await box('.picture') };
    await tab.close();
    return boxes;
  }

  it('says on a narrow screen what to do before the picture, on a wide one beside it', async () => {
    const narrow = await placed(400);
    assert.ok(narrow.advice.y + narrow.advice.height <= narrow.picture.y);
    const wide = await placed(1200);
    assert.ok(wide.advice.x >= wide.picture.x + wide.picture.width);
    assert.ok(Math.abs(wide.advice.y - wide.picture.y) < 1);
  });

  /** The text of every page of paper. */
  async function printed(html: string, paper: { format: string } | { height: string }): Promise<string[]> {
    const folder = temporaryFolder();
    const pdf = path.join(folder, 'book.pdf');
    const tab = await browser.newPage();
    await tab.setContent(html);
    await tab.pdf({ path: pdf, width: '216mm', ...paper });
    await tab.close();
    const to = `-sOutputFile=${path.join(folder, '%03d.txt')}`;
    execFileSync(need('/usr/bin/gs', 'ghostscript'), [
      ...['-q', '-dNOPAUSE', '-dBATCH', '-sDEVICE=txtwrite', to, pdf],
    ]);
    const names = fs.readdirSync(folder).filter(name => name.endsWith('.txt'));
    return names.sort().map(name => fs.readFileSync(path.join(folder, name), 'utf8'));
  }

  it('prints a picture and its forecast on one sheet of A4, and the tables on another', async () => {
    const bytes = await sharp({ create: { width: 900, height: 1200, channels: 3, background: '#888' } })
      .png()
      .toBuffer();
    const image: Image = { type: 'image/png', bytes, fullWidth: 900, fullHeight: 1200 };
    const shown = { small: image, large: image };
    const told = 'Some of this picture loses its shading in print, since the file has shades there. '.repeat(
      3,
    );
    const only = picture('only.png', [finding('blocked-shadows', 'note', told)]);
    const pages = await printed(bookPage('One', report([only]), [shown]), { format: 'A4' });
    const sheets = pages.slice(pages.findIndex(text => /^\s*only\.png/.test(text)));
    assert.equal(sheets.length, 2);
    for (const words of [/Read the note below, then send it/, /How it may print/, /one possible order below/])
      assert.match(sheets[0], words);
    assert.match(sheets[1], /In numbers/);
  });

  it('prints no page that is blank, wherever the words of a sheet end', async () => {
    for (let height = 180; height < 290; height += 9) {
      const pages = await printed(page, { height: `${height}mm` });
      for (const [at, text] of pages.entries()) assert.notEqual(text.trim(), '', `${at} of ${height} mm`);
    }
  });

  it('prints the picture’s name at the head of every page of its sheet', async () => {
    const pages = await printed(page, { format: 'A5' });
    const sheets = pages.slice(pages.findIndex(printed => /^\s*plates\/\s+first\.png/.test(printed)));
    assert.ok(sheets.length >= 4, `${sheets.length} pages`);
    for (const printed of sheets)
      assert.match(printed.trim().slice(0, 60), /^(plates\/\s+first\.png|second\.png)\s/);
  });

  it('opens with the network off and scripts off, asks for nothing and has nothing to complain of', async () => {
    const context = await browser.newContext({ offline: true, javaScriptEnabled: false });
    const tab = await context.newPage();
    const told: string[] = [];
    tab.on('console', message => told.push(message.text()));
    tab.on('pageerror', error => told.push(String(error)));
    tab.on('request', request => {
      if (!request.url().startsWith('data:')) told.push(request.url());
    });
    const file = path.join(temporaryFolder({ 'page.html': page }), 'page.html');
    await tab.goto(`file://${file}`);
    assert.deepEqual(told, [`file://${file}`]);
    await context.close();
  });

  it('draws the contact sheet as the order that is chosen, and as the files', async () => {
    const tab = await browser.newPage();
    await tab.setContent(page);
    const grey = async () => {
      const shot = await tab.locator('.frame img').first().screenshot();
      const { data } = await sharp(shot)
        .removeAlpha()
        .extract({ left: 10, top: 10, width: 1, height: 1 })
        .raw()
        .toBuffer({ resolveWithObject: true });
      return [...data];
    };
    const drawn = await grey();
    await tab.click('label[for="contacts-1"]');
    const another = await grey();
    await tab.click('label[for="contacts-files"]');
    assert.deepEqual(await grey(), [0x88, 0x88, 0x88]);
    assert.ok(await tab.locator('.as-files').isVisible());
    assert.ok(!(await tab.locator('.as-drawn').isVisible()));
    for (const colour of [drawn, another]) assert.notDeepEqual(colour, [0x88, 0x88, 0x88]);
    assert.notDeepEqual(drawn, another);
    await tab.close();
  });
});
