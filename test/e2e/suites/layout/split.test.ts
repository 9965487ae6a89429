import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import * as vscode from 'vscode';
import { tiff } from '../../../cli/support/tiff';
import { closeAll, extension, inWorkspace, problems, until } from '../../editor';
import { press, screenshot, workbenchText } from '../../window';

const at = (file: string) => inWorkspace(`split/${file}`).fsPath;
const SETTINGS = 'split/evengrey.json';
const LAYOUT = 'split/pages.md';

const on = (file: string) =>
  problems()
    .filter(problem => problem.file === file)
    .map(({ diagnostic }) => diagnostic);
const fixesAt = async (file: string, range: vscode.Range) =>
  (
    await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      inWorkspace(file),
      range,
    )
  ).map(({ title }) => title);

describe('a book whose pictures are stored in several ways, none of them in most', () => {
  before(async () => {
    await extension().activate();
    await fs.mkdir(at('.'), { recursive: true });
    await fs.writeFile(
      at('one.tif'),
      tiff(90, 60, x => [60 + x, 60 + x, 60 + x]),
    );
    await fs.writeFile(
      at('two.tif'),
      tiff(90, 60, x => [70 + x]),
    );
    await fs.writeFile(
      at('sepia.tif'),
      tiff(90, 60, x => [40 + 2 * x, 25 + 2 * x, 2 * x]),
    );
    await fs.writeFile(at('pages.md'), '![One](one.tif)\n\n![Two](two.tif)\n\n![Three](sepia.tif)\n');
    await fs.writeFile(at('evengrey.json'), '{ "process": "silver-halide" }\n');
    await until(
      'the finding',
      () => on(SETTINGS).map(({ message }) => message),
      all => all.some(message => /unlikely to match/.test(message)),
    );
  });
  afterEach(closeAll);
  after(() => fs.rm(at('.'), { recursive: true, force: true }));

  it('says so once in its settings, with the way to convert those that it names', async () => {
    await vscode.window.showTextDocument(inWorkspace(SETTINGS));
    const [told] = on(SETTINGS).filter(({ message }) => /unlikely to match/.test(message));
    const fixes = await fixesAt(SETTINGS, told.range);
    assert.ok(fixes.includes('Convert the 2 pictures...'), fixes.join());
    await vscode.commands.executeCommand('workbench.action.focusActiveEditorGroup');
    await press('Control+.');
    await workbenchText('.action-widget', /Convert the 2 pictures\.\.\./);
    await screenshot('layout-split-settings');
    await press('Enter');
    await workbenchText('.quick-input-title', /Convert 2 pictures/);
    await press('Escape');
  });

  it('says on the line of each that is to be converted how it is stored, for knowing', async () => {
    const { document } = await vscode.window.showTextDocument(inWorkspace(LAYOUT));
    const mixed = await until(
      'what is said on the lines',
      () => on(LAYOUT).filter(({ message }) => /others around it are not/.test(message)),
      all => all.length > 0,
    );
    assert.deepEqual(
      mixed.map(({ range, severity }) => [document.getText(range), severity]),
      [['two.tif', vscode.DiagnosticSeverity.Information]],
      'sepia is asked about its tone instead',
    );
    assert.match(mixed[0].message, /^two\.tif: It is stored as one grey channel/);
    const fixes = await fixesAt(LAYOUT, mixed[0].range);
    assert.ok(
      fixes.some(title => /^Convert to rgb-neutral.* place the result/.test(title)),
      fixes.join(),
    );
    await screenshot('layout-split-line');
  });

  it('lets a tone be listed as meant from its line', async () => {
    const { document } = await vscode.window.showTextDocument(inWorkspace(LAYOUT));
    const start = document.positionAt(document.getText().indexOf('sepia.tif') + 1);
    const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      new vscode.Range(start, start),
    );
    const meant = actions.find(({ title }) => /^Its tone is meant: list it/.test(title));
    assert.ok(meant?.command, actions.map(({ title }) => title).join());
    await vscode.commands.executeCommand(meant.command.command, ...meant.command.arguments!);
    const settings = JSON.parse(await fs.readFile(at('evengrey.json'), 'utf8'));
    assert.deepEqual(settings.intent, { toned: ['sepia.tif'] });
  });
});
