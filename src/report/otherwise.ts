// no-unit-test: test/report/text/convert.test.ts and test/report/json/convert.test.ts go through it
import type { Conversion, ConvertReport } from '../shared/conversion';

/** Results that are found to be of another encoding than was asked for. Where colour was to stay, that is as asked. */
export const otherThanAsked = ({
  conversions,
  below,
}: Pick<ConvertReport, 'conversions' | 'below'>): Conversion[] =>
  below === null ? foundOtherwise(conversions) : [];

/** Results of another encoding than that which was named, be it asked for or not. */
export const foundOtherwise = (conversions: readonly Conversion[]): Conversion[] =>
  conversions.filter(({ to, proof }) => proof && proof.encoding !== to);
