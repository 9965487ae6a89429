import type { ChromaFacts } from '../../shared/picture';
import type { Tone } from '../../shared/remedy';

/** Tint (a*, b*) by L*. */
export type TintLine = (L: number) => { a: number; b: number };

/**
 * The tint that a toned result has by lightness.
 * @param chroma of the source; its tone line is the median a*, b* of each of its lightness zones
 */
export function tintLine(tone: Tone, { zones }: Pick<ChromaFacts, 'zones'>): TintLine {
  if (tone.kind === 'stated') return () => tone;
  if (zones.length === 0) return () => ({ a: 0, b: 0 });
  if (tone.kind === 'even') {
    const total = zones.reduce((sum, { weight }) => sum + weight, 0);
    const mean = (axis: 'a' | 'b') =>
      zones.reduce((sum, zone) => sum + (zone.weight / total) * zone[axis], 0);
    const tint = { a: mean('a'), b: mean('b') };
    return () => tint;
  }
  const line = [...zones].sort((x, y) => x.L - y.L);
  return L => {
    const next = line.findIndex(zone => zone.L >= L);
    if (next <= 0) return next === 0 ? line[0] : line[line.length - 1];
    const [dark, light] = [line[next - 1], line[next]];
    const t = (L - dark.L) / (light.L - dark.L);
    return { a: dark.a + t * (light.a - dark.a), b: dark.b + t * (light.b - dark.b) };
  };
}

/** The tint of every entry of a plane's lightness: a*, b* interleaved. */
export function tinted(lightness: Float32Array, line: TintLine): Float32Array {
  const out = new Float32Array(lightness.length * 2);
  lightness.forEach((L, i) => {
    const { a, b } = line(L);
    out[i * 2] = a;
    out[i * 2 + 1] = b;
  });
  return out;
}
