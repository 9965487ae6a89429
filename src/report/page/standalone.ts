// no-unit-test: the tests of the pages that are put together by it open them
import { createHash } from 'node:crypto';
import { GENERATOR } from '../../layout';
import { type Html, html } from './html';

/**
 * A whole page for a browser in one file that loads nothing from anywhere.
 * @param script the only one that runs; left out: none does
 */
export function standalone(title: string, styles: readonly string[], body: Html, script = ''): string {
  const policy = ["default-src 'none'", 'img-src data:', "style-src 'unsafe-inline'"];
  if (script) policy.push(`script-src 'sha256-${createHash('sha256').update(script).digest('base64')}'`);
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
${GENERATOR}
<meta http-equiv="Content-Security-Policy" content="${policy.join('; ')}">
<title>${html`${title}`.text}</title>
<style>
${styles.join('\n')}
</style>
</head>
<body>${body.text}
${script && `<script>${script}</script>\n`}</body>
</html>
`;
}
