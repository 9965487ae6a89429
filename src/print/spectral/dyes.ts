import { parseTable } from '../../colour/table';
import chromogenicText from '../data/chromogenic_dye_density_generic_10nm.csv';
import { GRID } from './sampling';

/** Densities of three dyes on `GRID`, 1 at each one's peak: cyan, magenta, yellow. */
export type Dyes = readonly [Float64Array, Float64Array, Float64Array];

export interface DyeSet {
  mean: Dyes;
  /** Standard deviation over published dye sets, wavelength by wavelength. */
  deviation: Dyes;
}

/** Dye sets that a process can name. */
export type DyeSetId = 'chromogenic';

const sets: Record<DyeSetId, DyeSet> = { chromogenic: read(chromogenicText) };

export const dyeSet = (id: DyeSetId): DyeSet => sets[id];

function read(text: string): DyeSet {
  const table = parseTable(text);
  const from = table.column('nm').indexOf(GRID.from);
  const column = (name: string) => table.column(name).slice(from, from + GRID.count);
  return {
    mean: [column('C_mean'), column('M_mean'), column('Y_mean')],
    deviation: [column('C_sd'), column('M_sd'), column('Y_sd')],
  };
}

const LN10 = Math.LN10;

/**
 * Beer-Lambert on reflection densities: 10^-(c C + m M + y Y) per wavelength, written into `out`. `amounts`: peak
 * densities of cyan, magenta, yellow.
 */
export function dyeTransmittance(dyes: Dyes, amounts: ArrayLike<number>, out: Float64Array): Float64Array {
  const [C, M, Y] = dyes;
  const c = -LN10 * amounts[0];
  const m = -LN10 * amounts[1];
  const y = -LN10 * amounts[2];
  for (let i = 0; i < out.length; i++) out[i] = Math.exp(c * C[i] + m * M[i] + y * Y[i]);
  return out;
}

/**
 * Six ways in which a real dye set may differ from the mean, each as likely as the other sign: every dye stronger beside
 * its peak, or moved to longer waves. Together they have the table's variance at each wavelength; how far neighbouring
 * wavelengths go together is not published, and is taken as wholly (own simplification).
 */
export function dyeVariants({ mean, deviation }: DyeSet): Dyes[] {
  return [0, 1, 2].flatMap(dye => {
    const peak = mean[dye].indexOf(Math.max(...mean[dye]));
    const ways = [() => Math.SQRT1_2, (i: number) => Math.sign(i - peak) * Math.SQRT1_2];
    return ways.map(
      sign =>
        mean.map((density, j) =>
          j === dye ? density.map((value, i) => value + sign(i) * deviation[dye][i]) : density,
        ) as unknown as Dyes,
    );
  });
}
