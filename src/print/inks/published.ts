import { monotoneCurve } from '../../colour/press/curve';
import type { InkTable } from '../../colour/press/table';

type XYZ = readonly [number, number, number];

/** What is published of a printing condition without characterisation data: solids and tone value increase. */
export interface PublishedCondition {
  /** XYZ (Y = 100) of paper, the seven solid combinations of C, M, Y, black alone and all four inks. */
  solids: Record<'paper' | 'c' | 'm' | 'y' | 'my' | 'cy' | 'cm' | 'cmy' | 'k' | 'cmyk', XYZ>;
  /** Tone value increase of C, M, Y, K at 10, 20, ... 90 %, in percent (Murray-Davies on X, Y, Z, Y). */
  increase: readonly (readonly number[])[];
}

const FOLLOWS = [0, 1, 2, 1];
/** Solids by bits: C = 1, M = 2, Y = 4, K = 8. */
const BY_BITS = ['paper', 'c', 'm', 'cm', 'y', 'cy', 'my', 'cmy'] as const;
const STEPS = 500;

/**
 * An ink table from published solids and tone curves, with the shape between the solids borrowed from measured data of
 * another condition. Between the sixteen solids XYZ^(1/2) is mixed linearly by effective coverage (Yule-Nielsen
 * Neugebauer with n = 2), then the measured condition's departure from the same mixture of its own solids is added at
 * equal coverage, scaled to this condition's range. Overprints with black that are not published are placed between
 * black and all four inks by the darkness of the colour below.
 */
export function publishedInks(condition: PublishedCondition, shape: InkTable): InkTable {
  const own = cornerRoots(i => condition.solids[i]);
  const xyz = new Float64Array(3);
  const solidOfShape = (name: string): XYZ => {
    const inks = [...'cmyk'].map(ink => (name !== 'paper' && name.includes(ink) ? 1 : 0));
    shape.xyz(inks, xyz);
    return [xyz[0], xyz[1], xyz[2]];
  };
  const theirs = cornerRoots(solidOfShape);
  const scale = [0, 1, 2].map(i => (own[i] - own[7 * 3 + i]) / (theirs[i] - theirs[7 * 3 + i]));
  const coverage = condition.increase.map((increase, ink) => {
    const paper = condition.solids.paper[FOLLOWS[ink]];
    const solid = condition.solids[(['c', 'm', 'y', 'k'] as const)[ink]][FOLLOWS[ink]];
    return table(coverageCurve(increase, paper, solid));
  });
  const theirValue = [0, 1, 2, 3].map(ink => table(valueAtCoverage(shape, ink)));
  const covered = new Float64Array(4);
  const inksThere = new Float64Array(4);
  const mixOwn = new Float64Array(3);
  const mixTheirs = new Float64Array(3);
  return {
    xyz(inks, out) {
      for (let ink = 0; ink < 4; ink++) {
        covered[ink] = lookUp(coverage[ink], inks[ink]);
        inksThere[ink] = lookUp(theirValue[ink], covered[ink]);
      }
      mix(own, covered, mixOwn);
      mix(theirs, covered, mixTheirs);
      shape.xyz(inksThere, out);
      for (let i = 0; i < 3; i++) {
        const root = Math.max(0, mixOwn[i] + (Math.sqrt(out[i]) - mixTheirs[i]) * scale[i]);
        out[i] = root * root;
      }
    },
  };
}

/** XYZ^(1/2) of the sixteen solids, by bits. */
function cornerRoots(solid: (name: keyof PublishedCondition['solids']) => XYZ): Float64Array {
  const roots = new Float64Array(16 * 3);
  const [paper, cmy, k, cmyk] = (['paper', 'cmy', 'k', 'cmyk'] as const).map(name =>
    solid(name).map(Math.sqrt),
  );
  BY_BITS.forEach((name, bits) => {
    const below = solid(name).map(Math.sqrt);
    roots.set(below, bits * 3);
    roots.set(
      below.map((root, i) => k[i] - ((k[i] - cmyk[i]) * (paper[i] - root)) / (paper[i] - cmy[i])),
      (bits + 8) * 3,
    );
  });
  return roots;
}

function mix(roots: Float64Array, covered: Float64Array, out: Float64Array) {
  out.fill(0);
  for (let bits = 0; bits < 16; bits++) {
    let w = 1;
    for (let ink = 0; ink < 4; ink++) w *= (bits >> ink) & 1 ? covered[ink] : 1 - covered[ink];
    if (w === 0) continue;
    for (let i = 0; i < 3; i++) out[i] += w * roots[bits * 3 + i];
  }
}

/** Ink value -> effective coverage in the square-root scale. */
function coverageCurve(increase: readonly number[], paper: number, solid: number): (value: number) => number {
  const values = [0, ...increase.map((_, i) => (i + 1) / 10), 1];
  const toned = [0, ...increase.map((rise, i) => (i + 1) / 10 + rise / 100), 1];
  const covered = toned.map(
    area =>
      (Math.sqrt(paper) - Math.sqrt(paper + area * (solid - paper))) / (Math.sqrt(paper) - Math.sqrt(solid)),
  );
  return monotoneCurve(values, covered);
}

/** Effective coverage -> the ink value that gives it on the condition whose shape is borrowed. */
function valueAtCoverage(shape: InkTable, ink: number): (covered: number) => number {
  const out = new Float64Array(3);
  const inks = new Float64Array(4);
  const roots = Array.from({ length: 101 }, (_, i) => {
    inks[ink] = i / 100;
    shape.xyz(inks, out);
    return Math.sqrt(out[FOLLOWS[ink]]);
  });
  const paper = roots[0];
  const solid = roots[100];
  return monotoneCurve(
    roots.map(root => (paper - root) / (paper - solid)),
    roots.map((_, i) => i / 100),
  );
}

const table = (curve: (x: number) => number) =>
  Float64Array.from({ length: STEPS + 1 }, (_, i) => curve(i / STEPS));

function lookUp(values: Float64Array, x: number): number {
  const position = Math.min(1, Math.max(0, x)) * STEPS;
  const i = Math.min(STEPS - 1, Math.floor(position));
  return values[i] + (position - i) * (values[i + 1] - values[i]);
}
