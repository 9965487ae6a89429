// no-unit-test: test/layout/markdown/index.test.ts reads sizes by it
/** `{.wide width=80mm}`, `{: #one width="50%"}` straight behind a picture, as Markdown's dialects have it. */
const BRACES = /\{:?([^{}\n]{0,999})\}/y;
const PAIR = /(?:^|\s)(width|height)\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'}]+))/gi;
const NAME = /(?:^|\s)([.#])([^\s.#"'=}]+)/g;

export interface Attributes {
  id?: string;
  classes: string[];
  /** `width` and `height` as written, without spaces. */
  lengths: Record<string, string>;
}

/** The attributes at `at`. */
export function attributesAt(text: string, at: number): Attributes {
  BRACES.lastIndex = at;
  const braces = BRACES.exec(text)?.[1] ?? '';
  const names = [...braces.matchAll(NAME)];
  const of = (mark: string) => names.flatMap(([, first, name]) => (first === mark ? name : []));
  return {
    id: of('#')[0],
    classes: of('.'),
    lengths: Object.fromEntries(
      [...braces.matchAll(PAIR)].map(([, name, ...values]) => [
        name.toLowerCase(),
        values.join('').replace(/\s/g, ''),
      ]),
    ),
  };
}
