// no-unit-test: it lives in a webview; test/e2e/suites/translated tests it there
import { config } from '@vscode/l10n';

// Before anything is said: the page's shell brings the words of the editor's language along, none where it is English.
const words = document.getElementById('words')?.textContent;
if (words) config({ contents: words });
