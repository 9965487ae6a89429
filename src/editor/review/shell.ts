// no-unit-test: it lives in VS Code; test/e2e/suites/review tests it there
import { randomBytes } from 'node:crypto';
import * as vscode from 'vscode';

/** The page before anything is in it. Nothing is loaded but the extension's own files and pictures. */
export function reviewShell(webview: vscode.Webview, extension: vscode.Uri): string {
  const nonce = randomBytes(16).toString('base64');
  const address = (...path: string[]) => webview.asWebviewUri(vscode.Uri.joinPath(extension, ...path));
  const styles = ['preview.css', 'sheet.css', 'remedy.css', 'review.css'];
  const policy = `default-src 'none'; img-src blob:; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
  <meta charset="utf-8">
  <meta name="viewport" content="width=device-width">
  <meta http-equiv="Content-Security-Policy" content="${policy}">
  <title>Evengrey</title>
  ${styles.map(name => `<link rel="stylesheet" href="${address('media', name)}">`).join('\n  ')}
</head>
<body>
  <main class="review" aria-busy="true"></main>
  <script nonce="${nonce}" src="${address('dist', 'review.js')}"></script>
</body>
</html>`;
}
