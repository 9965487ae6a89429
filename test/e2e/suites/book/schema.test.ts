import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { closeAll, extension, inWorkspace, sleep, until } from '../../editor';
import { screenshot, workbenchEval, workbenchHover, workbenchText } from '../../window';

const SETTINGS = 'evengrey.json';
const SUGGESTIONS = '.suggest-widget.visible .monaco-list-row';
const DETAILS = '.suggest-details-container .suggest-details';

/** A settings file with the cursor at `|`. */
async function at(marked: string) {
  const cursor = marked.indexOf('|');
  await fs.writeFile(inWorkspace(SETTINGS).fsPath, marked.replace('|', ''));
  const document = await vscode.workspace.openTextDocument(inWorkspace(SETTINGS));
  await until(
    'the text in the editor',
    () => document.getText(),
    text => text === marked.replace('|', ''),
  );
  const editor = await vscode.window.showTextDocument(document);
  const position = document.positionAt(cursor);
  editor.selection = new vscode.Selection(position, position);
}

async function suggested(marked: string): Promise<string[]> {
  await at(marked);
  return until(
    'suggestions of the settings',
    async () => {
      await vscode.commands.executeCommand('editor.action.triggerSuggest');
      await workbenchText(SUGGESTIONS);
      return workbenchEval<string[]>(
        '.suggest-widget',
        '[...element.querySelectorAll(".monaco-list-row .label-name")].map(label => label.textContent)',
      );
    },
    labels => labels.length > 0 && !labels.includes('No suggestions.'),
  );
}

describe('settings as they are written', () => {
  let good: string;
  before(async () => {
    await extension().activate();
    good = await fs.readFile(inWorkspace(SETTINGS).fsPath, 'utf8');
  });
  afterEach(closeAll);
  after(() => fs.writeFile(inWorkspace(SETTINGS).fsPath, good));

  it('are completed by their keys, each with what it means', async () => {
    const keys = await suggested('{\n  "process": "inkjet",\n  "p|"\n}\n');
    for (const key of ['paper', 'pictures', 'parts']) assert.ok(keys.includes(key), keys.join());
    await vscode.commands.executeCommand('toggleSuggestionDetails');
    assert.match(await workbenchText(DETAILS), /\w+ \w+ \w+/);
    await screenshot('settings-completion');
    await vscode.commands.executeCommand('toggleSuggestionDetails');
  });

  it('are completed by the values that there are', async () => {
    const values = await suggested('{\n  "process": "|"\n}\n');
    for (const value of ['offset-coated', 'silver-halide', 'inkjet'])
      assert.ok(
        values.some(label => label.includes(value)),
        values.join(),
      );
  });

  it('have each fault told once', async () => {
    const faults = () =>
      vscode.languages.getDiagnostics(inWorkspace(SETTINGS)).map(({ message, range }) => ({
        message,
        line: range.start.line,
      }));
    await at('{\n  "process": "ofset-coated",\n  "papr": "glossy"|\n}\n');
    await until('faults', faults, all => all.length > 0);
    // another validation would follow within this time
    await sleep(2_000);
    assert.deepEqual(
      faults()
        .map(({ line }) => line)
        .sort(),
      [1, 2],
      JSON.stringify(faults()),
    );
    await screenshot('settings-faults');
  });

  it('are explained where they are pointed at', async () => {
    await at('{\n  "process": "inkjet"|\n}\n');
    await workbenchHover('.monaco-editor .view-line span > span', '"process"');
    assert.match(await workbenchText('.monaco-hover:not(.hidden)', /print/i), /printed|prints/);
    await screenshot('settings-hover');
  });
});
