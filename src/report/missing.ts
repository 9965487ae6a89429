// no-unit-test: test/report/text/convert.test.ts and test/report/json/convert.test.ts go through it
import type { Conversion, ConvertReport } from '../shared/conversion';

/** Pictures that were meant and are not in the folder for the results, which is not the whole set then. */
export const missingIn = ({
  conversions,
  folder,
}: Pick<ConvertReport, 'conversions' | 'folder'>): Conversion[] =>
  folder === null ? [] : conversions.filter(({ output }) => output === null);
