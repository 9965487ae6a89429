import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { extension, inEachTheme, inWorkspace, problems, rulesOn, until } from '../../editor';
import { screenshot, workbenchText } from '../../window';
import { typed } from './typed';

const MARKDOWN = 'chapters/one.md';
const LATEX = 'plates.tex';
const SIX = '../pictures/plate-6.png';

const on = (file: string) => problems().filter(problem => problem.file === file);
/** `text: rule` of all that stands on a document, exactly where it stands. */
const standing = (document: vscode.TextDocument) =>
  on(vscode.workspace.asRelativePath(document.uri))
    .map(
      ({ diagnostic: { range, code } }) => `${document.getText(range)}: ${(code as { value: string }).value}`,
    )
    .sort();

async function open(file: string) {
  const editor = await vscode.window.showTextDocument(inWorkspace(file));
  return { editor, document: editor.document };
}

/** Selects a text and types another over it, as a person does. */
async function typeOver(editor: vscode.TextEditor, old: string, text: string) {
  const { document } = editor;
  const start = document.getText().indexOf(old);
  assert.ok(start >= 0, `${old} is in ${document.getText()}`);
  const end = document.positionAt(start + old.length);
  editor.selection = new vscode.Selection(document.positionAt(start), end);
  await typed(document, text);
}

describe('lines of layouts', () => {
  before(async () => {
    await extension().activate();
    await until(
      'findings on a layout',
      () => on(MARKDOWN).length,
      n => n > 0,
    );
  });
  afterEach(async () => {
    await vscode.commands.executeCommand('workbench.action.closePanel');
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  });

  it('carry the findings of the pictures that they place, exactly on the path', async () => {
    const { document } = await open(MARKDOWN);
    assert.deepEqual(standing(document), [
      '../pictures/plate-6.png: residual-chroma',
      '../pictures/plate-9.jpg: unreadable',
    ]);
    const { document: latex } = await open(LATEX);
    assert.ok(standing(latex).includes('plate-7.tif: encoding-not-accepted'), standing(latex).join());
    assert.ok(standing(latex).includes('plate-6: residual-chroma'), standing(latex).join());
    assert.deepEqual(on('cover.typ'), []);
  });

  it('name the picture, and lead to it', () => {
    const { diagnostic } = on(MARKDOWN).find(({ diagnostic }) => /plate-6/.test(diagnostic.message))!;
    const finding = problems().find(({ file }) => file === 'pictures/plate-6.png')!;
    assert.equal(diagnostic.message, `plate-6.png: ${finding.diagnostic.message}`);
    assert.equal(diagnostic.severity, finding.diagnostic.severity);
    const [{ location, message }] = diagnostic.relatedInformation!;
    assert.equal(location.uri.path, inWorkspace('pictures/plate-6.png').path);
    assert.equal(message, 'pictures/plate-6.png');
  });

  it('tell of a picture that is missing, and only they', () => {
    const { diagnostic } = on(MARKDOWN).find(({ diagnostic }) => /plate-9/.test(diagnostic.message))!;
    assert.match(diagnostic.message, /stays blank on the page/);
    assert.deepEqual(rulesOn('pictures/plate-9.jpg'), []);
  });

  it('leave pictures that none of them places to be told once', async () => {
    const told = on('evengrey.json').filter(({ diagnostic }) =>
      /placed by no layout/.test(diagnostic.message),
    );
    assert.equal(told.length, 1);
    const { message, relatedInformation } = told[0].diagnostic;
    assert.match(message, /^3 pictures are placed by no layout/);
    assert.deepEqual(
      relatedInformation!.map(related => related.message),
      [3, 4, 5].map(n => `pictures/plate-${n}.jpg`),
    );
  });

  it('are read in the Problems panel, and a row leads to the line', async () => {
    await vscode.commands.executeCommand('workbench.actions.view.problems');
    assert.match(await workbenchText('.markers-panel', /one\.md/), /plate-6\.png: /);
  });

  it('move with what is typed above them, and change as another path is typed', async () => {
    const { editor, document } = await open(MARKDOWN);
    editor.selection = new vscode.Selection(0, 0, 0, 0);
    await typed(document, 'A line\n\n');
    await until(
      'the findings two lines further down',
      () => standing(document),
      all => all.includes(`${SIX}: residual-chroma`),
    );
    await typeOver(editor, SIX, '../pictures/plate-2.jpg');
    await until(
      'no finding but the missing one',
      () => standing(document).join(),
      all => all === '../pictures/plate-9.jpg: unreadable',
    );
    assert.equal(document.isDirty, true);
    await typeOver(editor, '../pictures/plate-9.jpg', '../pictures/plate-7.tif');
    await until(
      'what is found on the picture that is named now',
      () => standing(document).join(),
      all => all.includes('../pictures/plate-7.tif: encoding-not-accepted') && !all.includes('plate-9'),
    );
    await typeOver(editor, '../pictures/plate-7.tif', '../pictures/plate-8.jpg');
    await until(
      'a picture that is not there',
      () => standing(document).join(),
      all => all === '../pictures/plate-8.jpg: unreadable',
    );
  });

  it('go back to what is stored where a text is let go without being saved', async () => {
    await until(
      'the findings as they were',
      () =>
        on(MARKDOWN)
          .map(({ diagnostic }) => diagnostic.message.split(':')[0])
          .sort()
          .join(),
      all => all === 'plate-6.png,plate-9.jpg',
    );
  });

  it('read a picture that comes into the book by a text that is not saved', async () => {
    const stained = await fs.readFile(vscode.Uri.joinPath(inWorkspace(''), '../spare/stained.jpg').fsPath);
    const file = inWorkspace('pictures/plate-5.jpg').fsPath;
    const before = await fs.readFile(file);
    await fs.writeFile(file, stained);
    try {
      const { editor, document } = await open('cover.typ');
      assert.deepEqual(rulesOn('pictures/plate-5.jpg'), [], 'nothing places it yet');
      await typeOver(editor, 'pictures/plate-2.jpg', 'pictures/plate-5.jpg');
      await until(
        'its finding on the line',
        () => standing(document).join(),
        all => all.includes('pictures/plate-5.jpg: residual-chroma'),
      );
      assert.ok(rulesOn('pictures/plate-5.jpg').includes('residual-chroma'));
      await typeOver(editor, '45mm', '450mm');
      await until(
        'the resolution by the size in the text',
        () => standing(document).join(),
        all => all.includes('pictures/plate-5.jpg: low-resolution'),
      );
    } finally {
      await fs.writeFile(file, before);
    }
  });

  it('change with the picture, and with the settings', async () => {
    const { document } = await open(MARKDOWN);
    const picture = inWorkspace('pictures/plate-6.png').fsPath;
    const settings = inWorkspace('evengrey.json').fsPath;
    const [before, told] = [await fs.readFile(picture), await fs.readFile(settings, 'utf8')];
    const isStained = () => standing(document).includes(`${SIX}: residual-chroma`);
    try {
      await fs.copyFile(inWorkspace('pictures/plate-1.jpg').fsPath, picture);
      await until('no stain', isStained, is => !is);
      await fs.writeFile(picture, before);
      await until('the stain', isStained, is => is);
      await fs.writeFile(
        settings,
        JSON.stringify({ ...JSON.parse(told), rules: { 'residual-chroma': 'off' } }),
      );
      await until('a rule that is off', isStained, is => !is);
    } finally {
      await fs.writeFile(picture, before);
      await fs.writeFile(settings, told);
    }
    await until('the stain again', isStained, is => is);
  });

  inEachTheme('are readable', async theme => {
    await open(LATEX);
    await vscode.commands.executeCommand('workbench.actions.view.problems');
    await workbenchText('.markers-panel', /plate-7\.tif/);
    await screenshot(`layout-lines-${theme}`);
  });
});
