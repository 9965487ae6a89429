// no-unit-test: tested as one with pass.ts, against plain arithmetic
import type { Kernel } from './kernel';
import type { Cells } from './tally';

/** Collects the filled cells of the kernel's tables. Coarse cells (far from neutral, or too many mixes) stand at their middle. */
export function cellsOf(kernel: Kernel, channels: 1 | 3 | 4): Cells {
  const greys = greyCounts(kernel);
  if (channels === 1) return greyCells(greys);
  return channels === 3 ? colourCells(kernel, greys) : inkCells(kernel, greys);
}

/** Greys counted singly and those counted in pairs. */
function greyCounts(kernel: Kernel): Float64Array {
  const counts = Float64Array.from(new Uint32Array(kernel.memory, kernel.value('GREYS'), 256));
  const pairs = new Uint32Array(kernel.memory, kernel.value('PAIRS'), 65536);
  for (let pair = 0; pair < 65536; pair++) {
    if (pairs[pair] === 0) continue;
    counts[pair & 255] += pairs[pair];
    counts[pair >> 8] += pairs[pair];
  }
  return counts;
}

function greyCells(greys: Float64Array): Cells {
  const used = [...greys.keys()].filter(v => greys[v] > 0);
  return {
    channels: 1,
    length: used.length,
    count: Float64Array.from(used, v => greys[v]),
    values: Float32Array.from(used),
  };
}

function colourCells(kernel: Kernel, greys: Float64Array): Cells {
  const near = new Uint32Array(kernel.memory, kernel.value('NEAR'), 256 << 12);
  const far = new Uint32Array(kernel.memory, kernel.value('FAR'), 1 << 18);
  // R = G = B is counted apart: 32, 32 is the cell without difference
  for (let v = 0; v < 256; v++) near[(32 << 14) | (32 << 8) | v] += greys[v];
  const cells = room(3, filled(near) + filled(far));
  let n = 0;
  for (let i = 0; i < near.length; i++) {
    if (near[i] === 0) continue;
    const g = i & 255;
    cells.count[n] = near[i];
    cells.values[n * 3] = g + (i >> 14) - 32;
    cells.values[n * 3 + 1] = g;
    cells.values[n * 3 + 2] = g + ((i >> 8) & 63) - 32;
    n++;
  }
  for (let i = 0; i < far.length; i++) {
    if (far[i] === 0) continue;
    cells.count[n] = far[i];
    cells.values[n * 3] = (i >> 12) * 4 + 1.5;
    cells.values[n * 3 + 1] = ((i >> 6) & 63) * 4 + 1.5;
    cells.values[n * 3 + 2] = (i & 63) * 4 + 1.5;
    n++;
  }
  return cells;
}

/** Mixes of inks; black alone was counted apart, and again here where it came singly. */
function inkCells(kernel: Kernel, blacks: Float64Array): Cells {
  const slots = new Uint32Array(kernel.memory, kernel.value('MIXES'), 2 << kernel.value('MIX_BITS'));
  const coarseness = kernel.value('coarseness');
  const middle = ((1 << coarseness) - 1) / 2;
  let used = 0;
  for (let i = 1; i < slots.length; i += 2) if (slots[i] > 0) used++;
  const cells = room(4, used + blacks.filter(n => n > 0).length);
  let n = 0;
  for (let black = 0; black < 256; black++) {
    if (blacks[black] === 0) continue;
    cells.count[n] = blacks[black];
    cells.values[n * 4 + 3] = black;
    n++;
  }
  for (let i = 0; i < slots.length; i += 2) {
    if (slots[i + 1] === 0) continue;
    cells.count[n] = slots[i + 1];
    for (let ink = 0; ink < 4; ink++) cells.values[n * 4 + ink] = ((slots[i] >>> (8 * ink)) & 255) + middle;
    n++;
  }
  return cells;
}

function room(channels: number, length: number): Cells {
  return {
    channels,
    length,
    count: new Float64Array(length),
    values: new Float32Array(length * channels),
  };
}

function filled(table: Uint32Array): number {
  let n = 0;
  for (let i = 0; i < table.length; i++) if (table[i] > 0) n++;
  return n;
}
