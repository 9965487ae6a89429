// no-unit-test: test/report/json/index.test.ts reads reports line by line
/** Number of the contract: goes up when a name changes or goes, not when one is added. */
export const SCHEMA = 1;

/** One line a key, and one line an entry of the lists of objects. */
export function document(content: Record<string, unknown>): string {
  const lines = Object.entries(content).map(([key, value]) => {
    const isList = Array.isArray(value) && typeof value[0] === 'object';
    const text = isList
      ? `[\n${value.map(entry => JSON.stringify(entry)).join(',\n')}\n]`
      : JSON.stringify(value);
    return `${JSON.stringify(key)}:${text}`;
  });
  return `{\n${lines.join(',\n')}\n}\n`;
}
