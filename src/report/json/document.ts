// no-unit-test: test/report/json/index.test.ts reads reports line by line
/** Number of the contract: goes up when a name changes or goes, not when one is added. */
export const SCHEMA = 1;

/** A list that is worked out entry by entry while it is written: all of a large book at once would not fit. */
export class Each<T> {
  constructor(
    readonly entries: readonly T[],
    readonly json: (entry: T) => unknown,
  ) {}
}

/** One line a key, and one line an entry of the lists of objects. */
export const document = (content: Record<string, unknown>): string => [...documentParts(content)].join('');

/** The same in parts: a text cannot be as long as the report of a hundred thousand pictures. */
export function* documentParts(content: Record<string, unknown>): Generator<string> {
  for (const [at, [key, value]] of Object.entries(content).entries()) {
    yield `${at ? ',' : '{'}\n${JSON.stringify(key)}:`;
    const list = value instanceof Each ? value : listOf(value);
    if (!list?.entries.length) yield list ? '[]' : JSON.stringify(value);
    else {
      yield '[';
      for (const [i, entry] of list.entries.entries())
        yield `${i ? ',' : ''}\n${JSON.stringify(list.json(entry))}`;
      yield '\n]';
    }
  }
  yield '\n}\n';
}

const listOf = (value: unknown): Each<unknown> | null =>
  Array.isArray(value) && typeof value[0] === 'object' ? new Each(value, entry => entry) : null;
