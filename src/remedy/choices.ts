// no-unit-test: words alone
import type { Choosable } from '../shared/remedies';
import type { RemedyEncoding } from '../shared/remedy';

/** What a picture can be made, and what that means in print. */
export const encodingChoices: readonly Choosable<RemedyEncoding>[] = [
  {
    id: 'rgb-neutral',
    name: 'Equal red, green and blue',
    does: 'Every print house takes it; dyes or inks make its grey where it is printed.',
  },
  {
    id: 'single-channel',
    name: 'One grey channel',
    does: 'No tint can come back into the file. Ask the print house whether it takes it.',
  },
  {
    id: 'black-only',
    name: 'Black ink alone',
    does: 'The steadiest grey, the flattest black. For presses that keep the inks: ask first.',
  },
  {
    id: 'rgb-toned',
    name: 'Its own tone, made even',
    does: 'For a tone that is meant: greys of one lightness get one colour.',
  },
];
