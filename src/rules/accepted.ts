import type { BookPicture } from '../shared/finding';
import type { Target } from '../shared/target';

/**
 * Whether a target takes a picture as it is; true where nobody said what it takes. A house that takes R = G = B cannot
 * tell it from RGB with a trace of colour (which `residual-chroma` judges), and takes a tone that was meant in any RGB.
 */
export function takes(target: Target, { facts, intent }: BookPicture): boolean {
  const { encodings } = target;
  if (!encodings?.length || encodings.includes(facts.encoding)) return true;
  const rgb = encodings.includes('rgb-neutral') || encodings.includes('rgb-toned');
  if (facts.encoding === 'rgb-residual') return rgb;
  return facts.encoding === 'rgb-toned' && intent === 'toned' && rgb;
}
