import type { ChromaFacts } from '../../shared/picture';
import type { Meaning } from '../meaning/types';
import type { Blocks, Tally } from '../pass/tally';
import { type LightnessZones, lightnessZones, ZONES } from './lightness';
import { placesOf } from './places';
import { lightnessOfGreen, type Strays, straysOf } from './strays';
import { THRESHOLDS } from './thresholds';
import { LINE_POINTS, linePoint, type ToneLine, ToneTable } from './tone-line';
import { isNoise, steady, toneBeneathNoise } from './tone-noise';

/** What the encoding is judged by. */
export interface ChromaJudgement {
  facts: ChromaFacts;
  /** Largest C* of the tone line at a lightness that the picture has. */
  tone: number;
  /** Shares of the area whose blocks lie farther from the tone line than `strong` and `clear`. */
  strong: number;
  clear: number;
  /** Distance from which a block of this picture strays. */
  limit: number;
  /** Share of the area that strays without holding an edge. */
  smooth: number;
  /** Mean distance of single pixels from the tone line: what blocks average away. */
  pixelResidual: number;
  /** Which blocks stray; null where there is too little colour for any. */
  strays: Strays | null;
}

/** @param lab Lab of the tally's cells */
export function judgeChroma(
  tally: Tally,
  lab: Float32Array,
  meaning: Meaning,
  size: { width: number; height: number },
): ChromaJudgement {
  const { cells, blocks } = tally;
  const zones = lightnessZones(lab, cells);
  if (isColourless(lab)) return colourless(zones);
  const table = new ToneTable();
  table.add(lab, cells.length, cells.count);
  let line = table.line();
  let pixels = pixelChroma(tally, lab, line);
  // blocks cannot stray farther than pixels do
  if (pixels.max <= THRESHOLDS.stray / 2) return faint(pixels, zones, line);
  const ranges = blocks.greens.length > 0 ? lightnessOfGreen(cells, lab) : null;
  let strays = straysOf(blocks, meaning, line, ranges);
  if (isNoise(pixels.pixelResidual, strays, tally)) {
    line = toneBeneathNoise(blocks, meaning, pixels.pixelResidual, strays.noise);
    pixels = pixelChroma(tally, lab, line);
    strays = straysOf(blocks, meaning, line, ranges);
    steady(strays, blocks);
  }
  const areas = areasOf(tally, strays);
  const { tone, pixelResidual, ...chroma } = pixels;
  return {
    tone,
    strong: areas.strong,
    clear: areas.clear,
    limit: strays.limit,
    pixelResidual,
    smooth: areas.smooth,
    strays,
    facts: {
      ...chroma,
      share: areas.stray,
      zones: zonesOf(zones, line, areas.residual),
      // where most of the picture strays there are no places
      places:
        areas.stray > 0.5 ? [] : placesOf(blocks, strays.distance, strays.limit, size.width, size.height),
      maxBlock: areas.most,
    },
  };
}

function isColourless(lab: Float32Array): boolean {
  for (let i = 0; i < lab.length; i += 3)
    if (Math.max(Math.abs(lab[i + 1]), Math.abs(lab[i + 2])) > THRESHOLDS.rounding) return false;
  return true;
}

/** No colour: most pictures of a book. */
function colourless(zones: LightnessZones): ChromaJudgement {
  const none = new Float64Array(LINE_POINTS);
  const pixels = { max: 0, mean: 0, hue: null, maxPixel: 0, tone: 0, pixelResidual: 0 };
  return faint(pixels, zones, { a: none, b: none, from: 0, to: 100 });
}

/** Too little colour for any block to stray: the blocks are not looked at, their distances are at most the pixels'. */
function faint(pixels: PixelChroma, zones: LightnessZones, line: ToneLine): ChromaJudgement {
  const { tone, pixelResidual, ...chroma } = pixels;
  return {
    tone,
    strong: 0,
    clear: 0,
    limit: THRESHOLDS.stray,
    pixelResidual,
    smooth: 0,
    strays: null,
    facts: {
      ...chroma,
      share: 0,
      zones: zonesOf(zones, line, new Float64Array(ZONES)),
      places: [],
      maxBlock: chroma.maxPixel,
    },
  };
}

type PixelChroma = ReturnType<typeof pixelChroma>;

/** Chroma pixel by pixel. */
function pixelChroma({ cells, pixels }: Tally, lab: Float32Array, line: ToneLine) {
  let max = 0;
  let maxPixel = 0;
  let tone = 0;
  let sum = 0;
  let residual = 0;
  let sumA = 0;
  let sumB = 0;
  for (let i = 0; i < cells.length; i++) {
    const L = lab[i * 3];
    const a = lab[i * 3 + 1];
    const b = lab[i * 3 + 2];
    const point = linePoint(L);
    const lineA = line.a[point];
    const lineB = line.b[point];
    const chroma = Math.sqrt(a * a + b * b);
    max = Math.max(max, chroma);
    const distance = Math.sqrt((a - lineA) ** 2 + (b - lineB) ** 2);
    maxPixel = Math.max(maxPixel, distance);
    residual += cells.count[i] * distance;
    tone = Math.max(tone, Math.sqrt(lineA * lineA + lineB * lineB));
    sum += cells.count[i] * chroma;
    sumA += cells.count[i] * a;
    sumB += cells.count[i] * b;
  }
  const n = Math.max(1, pixels);
  return { max, maxPixel, tone, pixelResidual: residual / n, mean: sum / n, hue: hueOf(sumA / n, sumB / n) };
}

function hueOf(a: number, b: number): number | null {
  if (Math.hypot(a, b) < THRESHOLDS.hue) return null;
  return ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
}

/** Strays block by block, weighted by the pixels that count. */
function areasOf({ blocks, pixels }: Tally, { distance, zone: zones, limit }: Strays) {
  const n = Math.max(1, pixels);
  const residual = new Float64Array(ZONES);
  const weight = new Float64Array(ZONES);
  let [stray, smooth, clear, strong, most] = [0, 0, 0, 0, 0];
  for (let i = 0; i < distance.length; i++) {
    const count = blocks.count[i];
    const r = distance[i];
    if (count === 0) continue;
    const zone = zones[i];
    residual[zone] += count * r;
    weight[zone] += count;
    if (r > most) most = r;
    if (r > limit) stray += count;
    if (r > limit && !holdsEdge(blocks, i)) smooth += count;
    if (r > THRESHOLDS.clear) clear += count;
    if (r > THRESHOLDS.strong) strong += count;
  }
  return {
    stray: stray / n,
    smooth: smooth / n,
    clear: clear / n,
    strong: strong / n,
    most,
    residual: residual.map((sum, zone) => (weight[zone] > 0 ? sum / weight[zone] : 0)),
  };
}

function holdsEdge({ greens }: Blocks, block: number): boolean {
  return greens.length > 0 && greens[block * 2 + 1] - greens[block * 2] >= THRESHOLDS.edge;
}

function zonesOf(zones: LightnessZones, line: ToneLine, residual: Float64Array): ChromaFacts['zones'] {
  return zones.used.map(zone => ({
    L: zones.L[zone],
    weight: zones.weight[zone],
    a: line.a[linePoint(zones.L[zone])],
    b: line.b[linePoint(zones.L[zone])],
    residual: residual[zone],
  }));
}
