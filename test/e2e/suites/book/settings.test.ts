import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { extension, inWorkspace, problems, rulesOn, until } from '../../editor';
import { workbenchText } from '../../window';

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

  it('are read as JSON with comments', async () => {
    const document = await vscode.workspace.openTextDocument(inWorkspace(SETTINGS));
    assert.equal(document.languageId, 'jsonc');
  });
});
