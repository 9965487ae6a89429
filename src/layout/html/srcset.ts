// no-unit-test: test/layout/html/index.test.ts reads sets by it
import type { Mapped } from '../mapped';

/** HTML, 4.8.4.2.1: candidates end at a comma; a URL runs to the next white space and may hold commas, not end in them. */
const CANDIDATE = /[\s,]*([^\s]+)([^,(]*(?:\([^)]*(?:\)|$)[^,(]*)*)/y;

/** The URLs of a `srcset`. */
export function srcsetUrls(value: Mapped): Mapped[] {
  const urls: Mapped[] = [];
  const pattern = new RegExp(CANDIDATE);
  for (let match = pattern.exec(value.text); match; match = pattern.exec(value.text)) {
    const from = match.index + match[0].length - match[2].length - match[1].length;
    const url = match[1].replace(/,+$/, '');
    // a comma that ends the URL ends the candidate: what follows belongs to the next one
    if (url !== match[1]) pattern.lastIndex = from + match[1].length;
    if (url) urls.push(value.slice(from, from + url.length));
  }
  return urls;
}
