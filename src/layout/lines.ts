/**
 * Finds line and column (from 1) of an offset as editors count them: a line ends with LF, CR LF or CR, and a byte order
 * mark is no column.
 */
export function lineFinder(text: string): (offset: number) => { line: number; column: number } {
  const starts = [text.startsWith('\uFEFF') ? 1 : 0];
  for (const { index, 0: ending } of text.matchAll(/\r\n?|\n/g)) starts.push(index + ending.length);
  return offset => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle] <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - starts[low] + 1 };
  };
}
