// no-unit-test: test/layout/markdown/index.test.ts reads sizes by it
/** `{width=80mm}`, `{: width="50%"}` straight behind a picture, as Markdown's dialects have it. */
const BRACES = /\{:?([^{}\n]{0,999})\}/y;
const PAIR = /(?:^|\s)(width|height)\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'}]+))/gi;

/** Width and height in the attributes at `at`, as written. */
export function attributesAt(text: string, at: number): Record<string, string> {
  BRACES.lastIndex = at;
  const braces = BRACES.exec(text)?.[1] ?? '';
  const pairs = braces.matchAll(PAIR);
  return Object.fromEntries([...pairs].map(([, name, ...values]) => [name.toLowerCase(), values.join('')]));
}
