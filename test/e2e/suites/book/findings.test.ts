import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import path from 'node:path';
import * as vscode from 'vscode';
import { extension, inWorkspace, problems, rulesOn, spare, until } from '../../editor';
import { workbenchText } from '../../window';

const INKS = 'pictures/plate-7.tif';
const STAINED = 'pictures/plate-6.png';
const GOOD = 'pictures/plate-1.jpg';

describe('findings in the Problems panel', () => {
  before(() => extension().activate());

  it('appear when a book is opened, on the pictures that they are about', async () => {
    const onInks = await until(
      'a finding on the picture of inks',
      () => rulesOn(INKS),
      rules => rules.length > 0,
    );
    assert.ok(onInks.includes('encoding-not-accepted'), onInks.join());
    assert.ok(rulesOn(STAINED).includes('residual-chroma'), rulesOn(STAINED).join());
    assert.deepEqual(rulesOn(GOOD), []);
  });

  it('carry a severity that the panel lists, and a link to the rule’s page', () => {
    const { diagnostic } = problems().find(({ file }) => file === INKS)!;
    assert.equal(diagnostic.severity, vscode.DiagnosticSeverity.Error);
    const code = diagnostic.code as { value: string; target: vscode.Uri };
    assert.equal(code.target.scheme, 'command');
    assert.equal(code.target.query, `["${code.value}"]`);
    for (const { diagnostic } of problems())
      assert.notEqual(diagnostic.severity, vscode.DiagnosticSeverity.Hint);
  });

  it('are there to be read', async () => {
    await vscode.commands.executeCommand('workbench.actions.view.problems');
    const text = await workbenchText('.markers-panel', /plate-7\.tif/);
    assert.match(text, /encoding-not-accepted/);
    await vscode.commands.executeCommand('workbench.action.closePanel');
  });

  it('are counted in the status bar, by pictures', async () => {
    const wanting = new Set(
      problems()
        .filter(({ diagnostic }) => diagnostic.severity <= vscode.DiagnosticSeverity.Warning)
        .flatMap(({ file }) => (file.startsWith('pictures/') ? file : [])),
    );
    const words = await workbenchText('.statusbar', /to put right/);
    assert.match(words, new RegExp(`${wanting.size} of 7 pictures to put right`));
  });

  describe('when pictures change on disk', () => {
    const kept = new Map<string, Buffer>();
    const replace = async (file: string, by: string) =>
      fs.copyFile(path.join(spare(), by), inWorkspace(file).fsPath);

    before(async () => {
      for (const file of [INKS, STAINED, GOOD]) kept.set(file, await fs.readFile(inWorkspace(file).fsPath));
    });
    after(async () => {
      for (const [file, bytes] of kept) await fs.writeFile(inWorkspace(file).fsPath, bytes);
      await until(
        'the book as it was',
        () => rulesOn(INKS),
        rules => rules.length > 0,
      );
    });

    it('go with what was wrong', async () => {
      await replace(INKS, 'neutral.tif');
      await until(
        'no error',
        () => rulesOn(INKS),
        rules => !rules.includes('encoding-not-accepted'),
      );
    });

    it('come with what is wrong now', async () => {
      await replace(GOOD, 'stained.jpg');
      await until(
        'left-over colour',
        () => rulesOn(GOOD),
        rules => rules.includes('residual-chroma'),
      );
    });

    it('go with the picture', async () => {
      await fs.rm(inWorkspace(STAINED).fsPath);
      await until(
        'nothing',
        () => problems().map(p => p.file),
        files => !files.includes(STAINED),
      );
    });
  });
});
