import type { PictureFacts } from '../../shared/picture';
import type { Difference } from './differences';

/** Steps of L*, and of C*, that are worth a word. Own choice, below what is seen of a single tone. */
const STEP = 0.5;
/** The ends of the scale are single pixels: they move more, and mean less. */
const END = 2;
/** So much more or less of the strongest colour is a mark that came or went, however small. Own choice. */
const MARK = 4;
/** From so much chroma on a hue is worth a word, from so many degrees on another hue. */
const COLOURED = 2;
const TURNED = 10;

/** What is otherwise in a picture's lightness and colour, from its figures: its size does not matter. */
export const toneDifferences = (was: PictureFacts, is: PictureFacts): Difference[] => [
  ...lightness(was, is),
  ...ends(was, is),
  ...colour(was, is),
  ...mark(was, is),
];

/** How far tones moved on average, in L*: what it takes to make one distribution of the other. */
export function toneMoved({ tone: was }: PictureFacts, { tone: is }: PictureFacts): number {
  if (!was || !is) return 0;
  let ahead = 0;
  return was.histogram.reduce((sum, share, L) => {
    ahead += share - is.histogram[L];
    return sum + Math.abs(ahead);
  }, 0);
}

function lightness(was: PictureFacts, is: PictureFacts): Difference[] {
  const moved = toneMoved(was, is);
  if (moved < STEP) return [];
  const [before, after] = [was, is].map(({ tone }) => mean(tone!.histogram));
  const by = after - before;
  const words =
    Math.abs(by) < STEP
      ? `tones spread otherwise, or another picture: by ${moved.toFixed(1)} L* on average; as light as before on the whole (L* ${after.toFixed(0)})`
      : `${by > 0 ? 'lighter' : 'darker'}, or another picture: L* ${before.toFixed(1)}, now ${after.toFixed(1)} on average${asTaken(was, is)}`;
  return [{ of: 'lightness', words }];
}

/** Numbers of two kinds are compared by what they are taken to mean, which may be a guess. No figure tells an edit from an exchange. */
const asTaken = (was: PictureFacts, is: PictureFacts): string =>
  was.space === is.space && was.assumed === is.assumed
    ? ''
    : ', as far as two ways of storing a picture can be compared';

const mean = (histogram: readonly number[]): number =>
  histogram.reduce((sum, share, L) => sum + share * L, 0);

function ends({ tone: was }: PictureFacts, { tone: is }: PictureFacts): Difference[] {
  if (!was || !is) return [];
  return (['darkest', 'lightest'] as const)
    .filter(end => Math.abs(was[end] - is[end]) >= END)
    .map(end => ({
      of: 'lightness',
      words: `${end} tone L* ${was[end].toFixed(0)}, now ${is[end].toFixed(0)}`,
    }));
}

function colour({ chroma: was }: PictureFacts, { chroma: is }: PictureFacts): Difference[] {
  if (!was || !is) return [];
  const by = is.mean - was.mean;
  if (Math.abs(by) >= STEP)
    return [
      {
        of: 'colour',
        words: `${by > 0 ? 'more' : 'less'} colour: C* ${was.mean.toFixed(1)}, now ${is.mean.toFixed(1)} on average`,
      },
    ];
  if (was.hue === null || is.hue === null || is.mean < COLOURED) return [];
  const turn = Math.abs(((is.hue - was.hue + 540) % 360) - 180);
  return turn < TURNED
    ? []
    : [{ of: 'colour', words: `another hue: ${was.hue.toFixed(0)}°, now ${is.hue.toFixed(0)}° on average` }];
}

/** The average knows nothing of a small mark. */
function mark({ chroma: was }: PictureFacts, { chroma: is }: PictureFacts): Difference[] {
  if (!was || !is || Math.abs(is.max - was.max) < MARK) return [];
  return [{ of: 'colour', words: `strongest colour C* ${was.max.toFixed(0)}, now ${is.max.toFixed(0)}` }];
}
