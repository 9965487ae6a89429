import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import * as vscode from 'vscode';
import { extension, problems, spare, until } from '../../editor';
import { webviewText } from '../../window';

const SCHEME = 'not-a-disk';
const changes = new vscode.EventEmitter<vscode.FileChangeEvent[]>();

/** A place that VS Code can read and the operating system cannot, with one picture and settings beside it. */
class Elsewhere implements vscode.FileSystemProvider {
  readonly onDidChangeFile = changes.event;
  constructor(private readonly files: Map<string, Uint8Array>) {}
  watch = () => ({ dispose() {} });
  stat({ path }: vscode.Uri): vscode.FileStat {
    if (path === '/') return { type: vscode.FileType.Directory, ctime: 0, mtime: 0, size: 0 };
    return { type: vscode.FileType.File, ctime: 0, mtime: 0, size: this.readFile({ path }).length };
  }
  readDirectory = () =>
    [...this.files.keys()].map(name => [name.slice(1), vscode.FileType.File] as [string, number]);
  readFile({ path }: { path: string }): Uint8Array {
    const bytes = this.files.get(path);
    if (!bytes) throw vscode.FileSystemError.FileNotFound(path);
    return bytes;
  }
  createDirectory = readOnly;
  writeFile = readOnly;
  delete = readOnly;
  rename = readOnly;
}

function readOnly(): never {
  throw vscode.FileSystemError.NoPermissions('nothing may be written here');
}

describe('a picture that lies on no disk of this machine', () => {
  const uri = vscode.Uri.from({ scheme: SCHEME, path: '/plate.tif' });
  let bytes: Buffer;
  let provider: vscode.Disposable;

  before(async () => {
    await extension().activate();
    bytes = await fs.readFile(path.join(spare(), 'neutral.tif'));
    const files = new Map<string, Uint8Array>([
      ['/plate.tif', bytes],
      ['/evengrey.json', Buffer.from('{ "process": "silver-halide" }')],
    ]);
    provider = vscode.workspace.registerFileSystemProvider(SCHEME, new Elsewhere(files), {
      isReadonly: true,
    });
  });
  after(() => provider.dispose());

  /** Files in our temporary folders that are this very picture. */
  async function copies(): Promise<string[]> {
    const names = (await fs.readdir(os.tmpdir())).filter(name => /^evengrey-\w{6}$/.test(name));
    const found: string[] = [];
    for (const name of names) {
      const folder = path.join(os.tmpdir(), name);
      // folders of other programs come and go
      for (const file of await fs.readdir(folder).catch(() => [])) {
        const held = await fs.readFile(path.join(folder, file)).catch(() => null);
        if (held?.equals(bytes)) found.push(path.join(folder, file));
      }
    }
    return found;
  }

  it('is shown, from a copy that goes with its page; a book beside it is not checked', async () => {
    assert.deepEqual(await copies(), []);
    await vscode.commands.executeCommand('vscode.open', uri);
    assert.match(await webviewText('main', /How it may print/), /TIFF, 480 × 320 pixels/);
    assert.equal((await copies()).length, 1);
    assert.deepEqual(problems(), []);
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    await until('the copy gone', copies, list => list.length === 0);
  });
});
