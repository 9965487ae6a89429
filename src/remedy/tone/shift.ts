import { blackLightness } from '../../picture/meaning/press';
import type { RemedyWish } from '../../shared/remedy';
import { relit, type TonePlane } from '../grey/plane';
import { blackPointScaled } from './black-point';
import { curveAt } from './curve';

/**
 * What is the black of a source: L* 0 of grey and RGB; black ink alone, as the source means it; or none, where several
 * inks make the tones, of which each picture uses as much as it likes.
 */
export type SourceBlack = { kind: 'none' | 'light' } | { kind: 'ink'; L: number };

/** A darkest tone up to this L* is a black on every process: none prints one that is deeper by much. Own choice. */
const DEEP = 8;

/** Blacks this close in L* are the same. */
const SAME = 0.05;

/**
 * Carries out what is wished of the tones: the source's black becomes the result's, with the curve between. Tones of
 * several inks keep their L*; only into black ink alone they are compressed, as far as it cannot print them.
 * @returns the plane with its new lightness, what there is to tell of it, what became of the black, for the record, and
 * whether tones were moved for that
 */
export function shiftedTones(
  plane: TonePlane,
  black: SourceBlack,
  { to, curve, blackPoint }: Pick<RemedyWish, 'to' | 'curve' | 'blackPoint'>,
): { plane: TonePlane; told: string[]; black: string | null; blackMoved: boolean } {
  const scaled = blackPoint === 'scaled';
  const toInk = to === 'black-only';
  const done: Done[] = [];
  const steps: ((L: number) => number)[] = [];
  const shift = (L: number) => steps.reduce((value, step) => step(value), L);

  if (black.kind === 'ink' && scaled) steps.push(blackPointScaled(black.L, 0));
  if (black.kind === 'ink' && !toInk) done.push(scaled ? opened(black.L, to) : left(black.L));
  if (black.kind === 'none' && !toInk) done.push(ofSeveralInks(darkestOf(plane)));
  if (curve) steps.push(L => curveAt(curve, L));
  if (toInk) {
    const full = blackLightness(1);
    // of a source with a black of its own, that is 0 by now, whatever the curve makes of it
    const darkest = scaled && black.kind !== 'none' ? 0 : shift(darkestOf(plane));
    if (darkest < full - SAME) {
      steps.push(scaled ? blackPointScaled(darkest, full) : L => Math.max(L, full));
      if (black.kind !== 'ink') done.push(scaled ? closed(darkest, full) : cut(full));
    } else if (black.kind === 'none') done.push(reached());
  }
  return {
    plane: steps.length > 0 ? relit(plane, shift) : plane,
    told: done.map(({ told }) => told),
    black: done.length > 0 ? done.map(({ record }) => record).join(', ') : null,
    blackMoved: done.some(({ moves }) => moves),
  };
}

/** What became of a black, as a sentence, and as the record says it. */
interface Done {
  told: string;
  record: string;
  /** Lightness is another than it was. */
  moves: boolean;
}

const whole = (L: number) => L.toFixed(0);
const SCALED = 'and the tones above it were scaled with it (black point compensation, ISO 18619)';

const opened = (ink: number, to: RemedyWish['to']): Done => ({
  told: `Full black ink, L* ${whole(ink)} on its paper, became ${to === 'single-channel' ? 'the black of the grey channel, 0' : 'R = G = B = 0'}, ${SCALED}.`,
  record: `black point scaled from full black ink (L* ${whole(ink)}) to L* 0`,
  moves: true,
});
const left = (ink: number): Done => ({
  told: `Full black ink kept its lightness and is a dark grey of L* ${whole(ink)} now.`,
  record: `black point kept (full black ink, L* ${whole(ink)})`,
  moves: false,
});
const ofSeveralInks = (darkest: number): Done => ({
  told: `The tones kept the lightness that their inks have together, and no black point was scaled: the darkest tone is L* ${whole(darkest)}${darkest > DEEP ? ', and prints lighter than black does' : ''}.`,
  record: 'lightness of several inks kept, no black point scaled',
  moves: false,
});
const reached = (): Done => ({
  told: 'The tones kept the lightness that their inks have together: black ink alone reaches the darkest of them.',
  record: 'lightness of several inks kept, no black point scaled',
  moves: false,
});
const closed = (darkest: number, full: number): Done => ({
  told: `L* ${whole(darkest)} became full black ink, L* ${whole(full)} on its paper, ${SCALED}.`,
  record: `black point scaled from L* ${whole(darkest)} to full black ink (L* ${whole(full)})`,
  moves: true,
});
const cut = (full: number): Done => ({
  told: `Tones kept their lightness: what is darker than full black ink, L* ${whole(full)}, became that.`,
  record: `black point kept, cut off at full black ink (L* ${whole(full)})`,
  moves: true,
});

/** L* of the darkest pixel. */
function darkestOf({ index, lightness }: TonePlane): number {
  const used = new Uint8Array(lightness.length);
  for (let i = 0; i < index.length; i++) used[index[i]] = 1;
  let darkest = 100;
  for (let i = 0; i < used.length; i++) if (used[i] && lightness[i] < darkest) darkest = lightness[i];
  return darkest;
}
