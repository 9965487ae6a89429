import type { AB } from '../shared/forecast';
import type { PictureFacts } from '../shared/picture';

/** The picture's own colour at one lightness, with its share of the area. */
export interface ToneStep extends AB {
  L: number;
  weight: number;
}

/** Lightnesses at which colour is seen: near black and near paper there is none. */
const SEEN = { from: 15, to: 95 };
/** Less of the picture is not what is seen of it: neighbouring lightnesses are taken together until they hold as much. */
const LEAST_SHARE = 0.02;

/** The picture's tone from dark to light, where it is seen. */
export function toneSteps({ chroma }: PictureFacts): ToneStep[] {
  const seen = (chroma?.zones ?? [])
    .filter(({ L, weight }) => L >= SEEN.from && L <= SEEN.to && weight > 0)
    .map(({ L, weight, a, b }) => ({ L, weight, a, b }))
    .sort((x, y) => x.L - y.L);
  const steps: ToneStep[] = [];
  for (const zone of seen) {
    const last = steps.at(-1);
    if (last && last.weight < LEAST_SHARE) steps[steps.length - 1] = together(last, zone);
    else steps.push(zone);
  }
  return steps.filter(({ weight }) => weight >= LEAST_SHARE);
}

function together(x: ToneStep, y: ToneStep): ToneStep {
  const weight = x.weight + y.weight;
  const mean = (key: 'L' | 'a' | 'b') => (x[key] * x.weight + y[key] * y.weight) / weight;
  return { weight, L: mean('L'), a: mean('a'), b: mean('b') };
}

/** Colour of a tone at a lightness, on straight lines between its steps; black (L* 0) and paper (100) have none. */
export function toneAt(steps: readonly ToneStep[], L: number): AB {
  const line = [{ L: 0, a: 0, b: 0 }, ...steps, { L: 100, a: 0, b: 0 }];
  const above = Math.max(
    1,
    line.findIndex(step => step.L >= L),
  );
  const [from, to] = [line[above - 1], line[above]];
  const t = to.L === from.L ? 0 : (L - from.L) / (to.L - from.L);
  return { a: from.a + t * (to.a - from.a), b: from.b + t * (to.b - from.b) };
}
