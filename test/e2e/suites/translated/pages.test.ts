import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { bookRead, closeAll, inWorkspace, until } from '../../editor';
import { screenshot, webviewClick, webviewCount, webviewEval, webviewText } from '../../window';

/**
 * What a person sees or hears of a page that is not in the page's language, though it is said to be; and what is in it,
 * though it is said to be English. Names of files are in none.
 */
const amiss = (selector: string) =>
  webviewEval<string[]>(
    selector,
    `(() => {
      const names = /[\\w/-]+\\.(jpg|png|tif)|^translated$/g;
      const found = [];
      let depth = 0;
      const look = (text, element) => {
        const { lang } = element.closest('[lang]');
        const brackets = /[⟦⟧]/.test(text);
        if (lang === 'en') return brackets && found.push('said to be English: ' + text);
        let outside = '';
        for (const sign of text) {
          if (sign === '⟧') depth--;
          if (depth === 0) outside += sign;
          if (sign === '⟦') depth++;
        }
        if (/\\p{L}{2}/u.test(outside.replace(names, ''))) found.push(element.outerHTML.slice(0, 80) + ' says: ' + text);
      };
      const all = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
      for (let node = all.nextNode(); node; node = all.nextNode()) {
        if (node.nodeType === Node.TEXT_NODE) {
          if (!node.parentElement.closest('script, style')) look(node.data, node.parentElement);
          continue;
        }
        for (const name of ['aria-label', 'aria-valuetext', 'title', 'alt', 'placeholder'])
          if (node.hasAttribute(name)) {
            const around = depth;
            depth = 0;
            look(node.getAttribute(name), node);
            if (depth !== 0) found.push('without end: ' + node.getAttribute(name));
            depth = around;
          }
      }
      if (depth !== 0) found.push('without end: the page');
      return found;
    })()`,
  );

async function isTranslated(selector = 'main') {
  assert.equal(await webviewEval(selector, 'document.documentElement.lang'), 'qps-ploc');
  assert.deepEqual(await amiss(selector), []);
}

async function open(picture: string) {
  await vscode.commands.executeCommand('vscode.openWith', inWorkspace(picture), 'evengrey.picture');
  await webviewText('#zoom-told', /%/);
  await webviewText('.facing .pages', /garden[\s\S]*plate-1/);
}

describe('pages in the language of the editor', () => {
  before(bookRead);
  afterEach(closeAll);

  it('say of a picture everything but findings, forecasts and encodings', async () => {
    await open('pictures/plate-1.jpg');
    await isTranslated();
    assert.match(await webviewText('.advice #lead'), /^⟦See before and after⟧$/);
  });

  it('say so what is marked and read on it, and how large it is', async () => {
    await open('pictures/plate-1.jpg');
    await webviewClick('#picture');
    await webviewText('#reading', /⟦x \d+, y \d+: ⟦.* of 255⟧; ⟦L\* .*, chroma .*⟧⟧/);
    for (const mark of ['colour', 'shadows']) await webviewClick(`label[for="mark-${mark}"]`);
    await webviewText('.legend', /Left-over colour: less than/);
    await webviewClick('.keys summary');
    await webviewClick('#measure summary');
    await webviewClick('label[for="times-2"]');
    await webviewText('.crop-row', /2 times as strong as forecast/);
    await screenshot('translated-picture', { height: 1300 });
    await isTranslated();
  });

  it('say so what a conversion would make of it', async () => {
    await open('pictures/garden.jpg');
    await webviewEval('#remedy', 'element.scrollIntoView()');
    await webviewText('#remedy-outcome', /⟦What is done⟧/);
    await until(
      'every way to grey',
      () => webviewCount('.small-picture img'),
      n => n > 2,
    );
    assert.match(
      await webviewText('#remedy-outcome p'),
      /^⟦A picture in colour colour becomes equal red, green and blue rgb-neutral\.⟧$/,
    );
    assert.match(
      await webviewEval('#wipe', 'element.getAttribute("aria-valuetext")'),
      /^⟦50 % from the left as it is, the rest as it would be⟧$/,
    );
    await isTranslated();
  });

  it('say so of the whole book what is its own', async () => {
    await vscode.commands.executeCommand('evengrey.showBook');
    await until(
      'the small pictures',
      () => webviewCount('.contact .frame img'),
      n => n === 8,
    );
    assert.match(await webviewText('#count'), /^⟦8 pictures\.⟧$/);
    await webviewClick('#choose-convert');
    assert.match(await webviewText('#count'), /^⟦8 pictures; \d chosen\.⟧$/);
    await webviewClick('#whole summary');
    await webviewClick('#table summary');
    await webviewText('#table th', /⟦Picture⟧/);
    await screenshot('translated-book', { height: 1300 });
    await isTranslated();
    await webviewClick('label[for="drawn-files"]');
    await webviewClick('[data-value="fix"]');
    assert.match(await webviewText('#count'), /^⟦\d of 8 pictures shown/);
    await isTranslated();
  });

  it('say so what changed on the branch', async () => {
    await vscode.commands.executeCommand('evengrey.reviewBranch');
    assert.match(await webviewText('.review h1'), /^⟦What changed on this branch⟧$/);
    await webviewText('.changed', /plate-6\.png/);
    await isTranslated('.review');
    await webviewClick('[data-path="pictures/plate-6.png"]');
    await until(
      'both pictures',
      () => webviewCount('.review .pane img'),
      n => n === 2,
    );
    await screenshot('translated-review', { height: 1300 });
    await isTranslated('.review');
  });
});
