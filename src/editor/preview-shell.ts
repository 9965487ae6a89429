// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import { randomBytes } from 'node:crypto';
import * as vscode from 'vscode';

/** The preview's page before anything is in it. Nothing is loaded but the extension's own files and the picture. */
export function previewShell(webview: vscode.Webview, extension: vscode.Uri): string {
  const nonce = randomBytes(16).toString('base64');
  const address = (...path: string[]) => webview.asWebviewUri(vscode.Uri.joinPath(extension, ...path));
  const policy = `default-src 'none'; img-src blob:; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
  <meta charset="utf-8">
  <meta name="viewport" content="width=device-width">
  <meta http-equiv="Content-Security-Policy" content="${policy}">
  <title>Evengrey</title>
  <link rel="stylesheet" href="${address('media', 'preview.css')}">
  <link rel="stylesheet" href="${address('media', 'sheet.css')}">
  <link rel="stylesheet" href="${address('media', 'remedy.css')}">
</head>
<body>
  <main class="sheet" aria-live="off" aria-busy="true"></main>
  <script nonce="${nonce}" src="${address('dist', 'preview.js')}"></script>
</body>
</html>`;
}
