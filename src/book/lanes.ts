/**
 * Works through `items`, at most `count` of them at a time, and gives the results in their order. The first failure
 * ends it; what is then at work still ends by itself.
 */
export async function inLanes<Item, Result>(
  items: readonly Item[],
  count: number,
  work: (item: Item) => Promise<Result>,
): Promise<Result[]> {
  const results: Result[] = new Array(items.length);
  let next = 0;
  let failed = false;
  const lane = async () => {
    while (next < items.length && !failed) {
      const at = next++;
      try {
        results[at] = await work(items[at]);
      } catch (error) {
        failed = true;
        throw error;
      }
    }
  };
  await Promise.all(Array.from({ length: Math.min(count, items.length) }, lane));
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
