import { worthAsking } from '../../print/evenness';
import { inOrders } from '../words';
import { mean, type Print } from './prints';

/** One way that the print house may take with some pictures. */
interface HouseWay {
  label: string;
  /** Mean chance (0-1) of a visible tint. */
  probability: number;
}

/** What to ask the print house about pictures on one target, because much hangs on it; null where nothing does. */
export function questionOf(prints: readonly Print[]): string | null {
  const ways = waysOf(prints).toSorted((x, y) => x.probability - y.probability);
  const [best, worst] = [ways[0], ways[ways.length - 1]];
  if (!best || !worthAsking([best.probability, worst.probability])) return null;
  return `It depends on what the print house does with such files: a tint is seen ${inOrders(best.probability)} by one way (${best.label}), ${inOrders(worst.probability)} by another (${worst.label}). Ask which it takes.`;
}

/** What is stored in another way goes another way, so that each is the mean of those that can take it. */
function waysOf(prints: readonly Print[]): HouseWay[] {
  const labels = new Set(prints.flatMap(({ forecast }) => forecast.routes?.map(({ label }) => label) ?? []));
  return [...labels].map(label => {
    const chances = prints.flatMap(
      ({ forecast }) =>
        forecast.routes?.filter(way => way.label === label).map(({ tint }) => tint.seen) ?? [],
    );
    return { label, probability: mean(chances) };
  });
}
