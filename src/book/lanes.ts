/**
 * Works through `items`, at most `count` of them at a time, and gives the results in their order. After the first
 * failure nothing more is begun; what is then at work is waited for, so that nothing goes on behind the caller's back.
 */
export async function inLanes<Item, Result>(
  items: readonly Item[],
  count: number,
  work: (item: Item) => Promise<Result>,
): Promise<Result[]> {
  const results: Result[] = new Array(items.length);
  const failures: unknown[] = [];
  let next = 0;
  const lane = async () => {
    while (next < items.length && !failures.length) {
      const at = next++;
      try {
        results[at] = await work(items[at]);
      } catch (error) {
        failures.push(error);
      }
    }
  };
  await Promise.all(Array.from({ length: Math.min(count, items.length) }, lane));
  if (failures.length) throw failures[0];
  return results;
}

/** Lets everything else have its turn when a loop has kept the process to itself for so many milliseconds. */
export function breather(milliseconds = 10): () => Promise<void> | undefined {
  let since = performance.now();
  return () => {
    if (performance.now() - since < milliseconds) return undefined;
    return new Promise(resolve =>
      setImmediate(() => {
        since = performance.now();
        resolve();
      }),
    );
  };
}
