// no-unit-test: test/layout/asciidoc/index.test.ts reads macros by it
const PART = /[ \t]*(?:([\w-]+)[ \t]*=[ \t]*)?(?:"((?:\\.|[^"\\])*)"|([^,]*))[ \t]*(?:,|$)/y;

/** The attributes of a macro: named ones by name, others by their number from 1. */
export function attributeList(text: string): Map<string, string> {
  const list = new Map<string, string>();
  let position = 0;
  for (PART.lastIndex = 0; PART.lastIndex < text.length; ) {
    const match = PART.exec(text);
    if (!match) break;
    const value = (match[2] ?? match[3]).trim();
    if (match[1]) list.set(match[1].toLowerCase(), value);
    else list.set(String(++position), value);
  }
  return list;
}
