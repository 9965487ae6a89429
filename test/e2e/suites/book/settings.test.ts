import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { extension, inWorkspace, problems, rulesOn, until } from '../../editor';
import { ask, choose } from '../../quick-fix';
import { press, screenshot, workbenchText } from '../../window';

const SETTINGS = 'evengrey.json';
const errorsInSettings = () =>
  problems().filter(
    ({ file, diagnostic }) => file === SETTINGS && diagnostic.severity === vscode.DiagnosticSeverity.Error,
  );

describe('settings of a book', () => {
  let good: string;
  const write = (text: string) => fs.writeFile(inWorkspace(SETTINGS).fsPath, text);

  before(async () => {
    await extension().activate();
    good = await fs.readFile(inWorkspace(SETTINGS).fsPath, 'utf8');
    await until(
      'findings',
      () => rulesOn('pictures/plate-7.tif'),
      rules => rules.length > 0,
    );
  });
  after(async () => {
    await write(good);
    await until(
      'findings',
      () => rulesOn('pictures/plate-7.tif'),
      rules => rules.length > 0,
    );
  });

  it('are marked where they are wrong, and nothing is judged by them', async () => {
    await write('{\n  // who prints it\n  "proces": "offset-coated"\n}\n');
    const [{ diagnostic }] = await until('a mark', errorsInSettings, found => found.length > 0);
    assert.match(diagnostic.message, /process/);
    assert.deepEqual(diagnostic.range.start, new vscode.Position(2, 2));
    assert.deepEqual(rulesOn('pictures/plate-7.tif'), []);
    assert.match(await workbenchText('.statusbar', /Evengrey settings/), /Evengrey settings/);
  });

  it('have the word that was meant written by a quick fix', async () => {
    await write('{\n  "process": "offset-coated",\n  "ligth": "D50"\n}\n');
    const said = () =>
      errorsInSettings().find(({ diagnostic }) => /Did you mean "light"\?/.test(diagnostic.message));
    await until('a mark', said, found => found !== undefined);
    const editor = await vscode.window.showTextDocument(inWorkspace(SETTINGS));
    await ask(editor, '"ligth"', /Write "light" instead/);
    await screenshot('book-settings-word');
    await choose('Write "light" instead');
    await until(
      'the word',
      () => editor.document.getText(),
      text => text.includes('"light": "D50"') && !text.includes('ligth'),
    );
    await editor.document.save();
    await until('no mark', errorsInSettings, found => found.length === 0);
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
  });

  it('are used again once they are right', async () => {
    await write(
      '{ "process": "offset-coated", "encodings": ["four-channel"], "rules": { "mixed-encodings": "off" } }',
    );
    await until(
      'findings by the new settings',
      () => rulesOn('pictures/plate-1.jpg'),
      rules => rules.includes('encoding-not-accepted'),
    );
    assert.deepEqual(errorsInSettings(), []);
  });

  it('are told where they name what is not there, and are used all the same', async () => {
    await write(
      '{\n  "process": "offset-coated",\n  "spreads": [["pictures/plate-7.tif", "pictures/plate-10.jpg"]]\n}\n',
    );
    const [{ diagnostic }] = await until(
      'a warning',
      () =>
        problems().filter(
          ({ file, diagnostic }) => file === SETTINGS && /A spread names/.test(diagnostic.message),
        ),
      found => found.length > 0,
    );
    assert.match(diagnostic.message, /"pictures\/plate-10\.jpg", and nothing matches it\. Did you mean/);
    assert.equal(diagnostic.severity, vscode.DiagnosticSeverity.Warning);
    assert.deepEqual(diagnostic.range, new vscode.Range(2, 39, 2, 62));
    assert.ok(rulesOn('pictures/plate-7.tif').length > 0);
    const editor = await vscode.window.showTextDocument(inWorkspace(SETTINGS));
    await ask(editor, '"pictures/plate-10.jpg"', /Write "pictures\/plate-1\.jpg" instead/);
    await screenshot('book-settings-spread');
    await press('Escape');
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    await write('{\n  "process": "offset-coated",\n  "paper": "photo-lustre"\n}\n');
    const [{ diagnostic: paper }] = await until(
      'a doubt about the paper',
      () => problems().filter(({ diagnostic }) => /No such paper is made/.test(diagnostic.message)),
      found => found.length > 0,
    );
    assert.equal(paper.severity, vscode.DiagnosticSeverity.Warning);
    assert.deepEqual(paper.range, new vscode.Range(2, 11, 2, 25));
    await write('{\n  "process": "offset-coated",\n  "layouts": ["missing.md"]\n}\n');
    const [{ diagnostic: layout }] = await until('a mark', errorsInSettings, found => found.length > 0);
    assert.match(layout.message, /There is no layout "missing\.md"/);
    assert.deepEqual(layout.range, new vscode.Range(2, 14, 2, 26));
  });

  it('are read as JSON with comments', async () => {
    const document = await vscode.workspace.openTextDocument(inWorkspace(SETTINGS));
    assert.equal(document.languageId, 'jsonc');
  });
});
