import { percent } from '../../rules/words';
import type { Marks } from '../../shared/look';
import { MARK, TRANSPARENT } from '../../shared/look';
import type { Sheet } from '../../shared/sheet';

export type OverlayId = 'colour' | 'shadows' | 'lights' | 'ink';

/** Something that can be marked on the picture. */
export interface Overlay {
  id: OverlayId;
  name: string;
  /** How much of the picture it is and what it means in print: a sentence, once the picture was measured. */
  told(shares: Marks['shares']): string;
  /** Whether a cell of the grid is marked. */
  marks(marks: Marks, cell: number): boolean;
}

/**
 * What can be marked on a picture, for one of its conditions. Of what the process does only the forecast is known, and
 * the sentences say so.
 */
export function overlaysOf({ encoding, conditions }: Sheet, condition: number): Overlay[] {
  const on = conditions[condition];
  return [
    encoding.id === 'colour' ? COLOUR : LEFT_OVER,
    ...(on ? [shadowsOn(on)] : []),
    LIGHTS,
    ...(on?.inkLimit ? [inkOn(on.process, on.inkLimit)] : []),
  ];
}

const ofColour = (marks: Marks, cell: number) => (marks.kinds[cell] & MARK.colour) !== 0;

const LEFT_OVER: Overlay = {
  id: 'colour',
  name: 'Left-over colour',
  told: ({ colour }) =>
    colour > 0
      ? `Left-over colour: ${percent(colour)} of the picture strays from its own tone far enough to be seen as a stain on the grey.`
      : 'Left-over colour: none. Nowhere does the picture stray from its own tone far enough to be seen.',
  marks: ofColour,
};

const COLOUR: Overlay = {
  id: 'colour',
  name: 'Colour',
  told: ({ colour }) => `Colour: ${percent(colour)} of the picture is coloured, and prints so.`,
  marks: ofColour,
};

const LIGHTS: Overlay = {
  id: 'lights',
  name: 'Clipped lights',
  told: ({ lights }) =>
    lights > 0
      ? `Clipped lights: ${percent(lights)} of the picture is cut off at white and prints as bare paper, without any shade. Small spots and a frame are left out.`
      : 'Clipped lights: none but small spots. The paper shines through nowhere as a hole.',
  marks: (marks, cell) => (marks.kinds[cell] & MARK.lights) !== 0,
};

function shadowsOn({ process, closed }: Sheet['conditions'][number]): Overlay {
  const limit = Math.round(100 * closed.below);
  return {
    id: 'shadows',
    name: 'Blocked shadows',
    told: () =>
      closed.share > 0
        ? `Blocked shadows: by the forecast ${percent(closed.share)} of the picture, all below L* ${closed.below.toFixed(0)} in the file, prints like the black of ${process}. Shades in it are not told apart there.`
        : `Blocked shadows: none. By the forecast every shade of the picture is told from the black of ${process}.`,
    marks: ({ lightness }, cell) => lightness[cell] !== TRANSPARENT && lightness[cell] < limit,
  };
}

function inkOn(process: string, { percent: limit, stated }: { percent: number; stated: boolean }): Overlay {
  const whose = stated ? `the settings allow` : `${process} usually takes`;
  return {
    id: 'ink',
    name: 'Total ink',
    told: ({ ink }) => {
      const above = ink?.reduce((sum, share, total) => (total > limit ? sum + share : sum), 0) ?? 0;
      return above > 0
        ? `Total ink: ${percent(above)} of the picture carries more than the ${limit} % that ${whose}. It may smear or dry badly there.`
        : `Total ink: nowhere more than the ${limit} % that ${whose}.`;
    },
    marks: ({ ink }, cell) => ink !== null && ink[cell] > limit,
  };
}
