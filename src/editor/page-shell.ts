// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import { randomBytes } from 'node:crypto';
import * as vscode from 'vscode';

/** What a page is made of: a program and style sheets, from the extension's folder on, and the class of its place. */
export interface Page {
  program: `dist/${'preview' | 'book' | 'review'}.js`;
  styles: readonly string[];
  className: string;
}

/**
 * Fills a webview with a page before anything is in it, in the editor's language where there are words for it. Nothing
 * is loaded but the extension's own files and pictures.
 */
export function showPage(webview: vscode.Webview, extension: vscode.Uri, page: Page) {
  const folder = (name: string) => vscode.Uri.joinPath(extension, name);
  webview.options = { enableScripts: true, localResourceRoots: [folder('media'), folder('dist')] };
  webview.html = shell(webview, extension, page);
}

function shell(webview: vscode.Webview, extension: vscode.Uri, { program, styles, className }: Page): string {
  const nonce = randomBytes(16).toString('base64');
  const address = (file: string) => webview.asWebviewUri(vscode.Uri.joinPath(extension, file));
  const policy = `default-src 'none'; img-src blob:; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'`;
  const { bundle } = vscode.l10n;
  return `<!DOCTYPE html>
<html lang="${bundle ? vscode.env.language : 'en'}">
<head>
  <meta charset="utf-8">
  <meta name="viewport" content="width=device-width">
  <meta http-equiv="Content-Security-Policy" content="${policy}">
  <title>Evengrey</title>
  ${styles.map(name => `<link rel="stylesheet" href="${address(name)}">`).join('\n  ')}
</head>
<body>
  <main class="${className}" aria-live="off" aria-busy="true"></main>${bundle ? `\n  ${wordsOf(bundle)}` : ''}
  <script nonce="${nonce}" src="${address(program)}"></script>
</body>
</html>`;
}

/** As data, which no policy on scripts is asked about; nothing in it ends the element early. */
const wordsOf = (bundle: Record<string, string>): string =>
  `<script type="application/json" id="words">${JSON.stringify(bundle).replaceAll('<', '\\u003c')}</script>`;
