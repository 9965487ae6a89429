// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import { randomUUID } from 'node:crypto';
import fs from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import * as vscode from 'vscode';
import type { Books } from './books';
import type { CheckerClient } from './checker-client';
import { PreviewSession } from './preview-session';

/** The same page twice: VS Code shows no TIFF, so ours is its editor; for what VS Code shows ours is on request. */
export const TIFF_EDITOR = 'evengrey.tiff';
export const PICTURE_EDITOR = 'evengrey.picture';

/** A picture, read from the disk of this machine; one that lies elsewhere is copied there while it is open. */
interface PictureDocument extends vscode.CustomDocument {
  file: string;
}

/** Read-only editors of pictures: nothing is ever written to one. */
export function registerPictureEditors(
  extension: vscode.Uri,
  books: Books,
  checker: CheckerClient,
): vscode.Disposable {
  const provider: vscode.CustomReadonlyEditorProvider<PictureDocument> = {
    async openCustomDocument(uri) {
      if (uri.scheme === 'file') return { uri, file: uri.fsPath, dispose() {} };
      const file = await copyOf(uri);
      return { uri, file, dispose: () => void fs.rm(path.dirname(file), { recursive: true, force: true }) };
    },
    resolveCustomEditor({ uri, file }, panel) {
      const session = new PreviewSession(panel, file, uri, books, checker, extension);
      if (uri.scheme !== 'file' || books.of(uri)) return;
      // no book watches this picture
      const watcher = vscode.workspace.createFileSystemWatcher(
        new vscode.RelativePattern(vscode.Uri.joinPath(uri, '..'), path.posix.basename(uri.path)),
      );
      watcher.onDidChange(() => session.refresh());
      panel.onDidDispose(() => watcher.dispose());
    },
  };
  return vscode.Disposable.from(
    ...[TIFF_EDITOR, PICTURE_EDITOR].map(viewType =>
      vscode.window.registerCustomEditorProvider(viewType, provider, {
        supportsMultipleEditorsPerDocument: true,
      }),
    ),
  );
}

/** Of a revision in source control, or a workspace that is not on this machine. */
async function copyOf(uri: vscode.Uri): Promise<string> {
  const bytes = await vscode.workspace.fs.readFile(uri);
  const dir = await fs.mkdtemp(path.join(os.tmpdir(), 'evengrey-'));
  const file = path.join(dir, `${randomUUID()}${path.posix.extname(uri.path)}`);
  await fs.writeFile(file, bytes, { mode: 0o600 });
  return file;
}
