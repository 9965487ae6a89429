import type { Conversion, ConvertReport } from '../shared/conversion';
import type { Encoding } from '../shared/picture';

type Results = Pick<ConvertReport, 'conversions' | 'below'>;

/** Results that are found to be of another encoding than was asked for. Colour that was to stay is as asked. */
export const otherThanAsked = ({ conversions, below }: Results): Conversion[] =>
  foundOtherwise(conversions).filter(each => below === null || !hasColour(each));

/** Results in which colour is left because it was to stay. */
export const withColourKept = ({ conversions, below }: Results): Conversion[] =>
  below === null ? [] : foundOtherwise(conversions).filter(hasColour);

/** Results of another encoding than that which was named, be it asked for or not. */
const foundOtherwise = (conversions: readonly Conversion[]): Conversion[] =>
  conversions.filter(({ to, proof }) => proof && proof.encoding !== to);

/** What pictures in R, G, B are found to be whose colour, or some of it, is there. */
const WITH_COLOUR: readonly Encoding[] = ['colour', 'rgb-toned', 'rgb-residual'];

const hasColour = ({ proof }: Conversion): boolean => proof !== null && WITH_COLOUR.includes(proof.encoding);
