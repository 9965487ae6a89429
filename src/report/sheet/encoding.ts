// no-unit-test: words alone
import type { Encoding } from '../../shared/picture';

/** How each encoding is called in a sentence of its own, and what it means once it is printed. */
export const encodings: Record<Encoding, { name: string; meaning: string }> = {
  'single-channel': {
    name: 'One grey channel',
    meaning:
      'The file has no tint of its own, and none can be left in it. Which inks or dyes make the grey, and so its tint, is decided where it is printed.',
  },
  'rgb-neutral': {
    name: 'Equal red, green and blue',
    meaning:
      'The file has no tint of its own. A photographic process makes the grey of three dyes, an ink press separates it, most often into four inks.',
  },
  'rgb-residual': {
    name: 'Grey with left-over colour',
    meaning:
      'Most of it is grey, but in places the three channels differ: colour that stayed when the picture was made grey. It prints as a stain or as a cast.',
  },
  'rgb-toned': {
    name: 'A grey with a tone of its own',
    meaning:
      'Greys of one lightness have one colour all over the picture; from shadows to lights it may change, as in a split tone. A deliberate tone, or a cast: it prints, and the process adds its own tint.',
  },
  'black-only': {
    name: 'Black ink alone',
    meaning:
      'One ink makes the whole picture. On a press its grey follows the paper and drifts least of all, but its black is the flattest and its screen the easiest to see.',
  },
  'four-channel': {
    name: 'Grey of four inks',
    meaning:
      'Colours and black together make the grey. On a press it reaches a deep black; its tint depends on the balance of the three colours and moves with the press.',
  },
  'three-ink': {
    name: 'Grey of three inks, without black',
    meaning:
      'Cyan, magenta and yellow alone make the grey. Every drift of one of them is seen: the least steady way to print a grey on an ink press.',
  },
  bilevel: { name: 'Black or white', meaning: 'One bit a pixel: line work, with no greys to be tinted.' },
  'lab-neutral': {
    name: 'Lightness without colour',
    meaning:
      'Stored as Lab, with a and b at neutral: no tint of its own. Few print houses take Lab as it is; most convert it first.',
  },
  colour: { name: 'A picture in colour', meaning: 'It is listed, not judged as a grey.' },
  unreadable: { name: 'Not readable', meaning: 'Nothing is known of what would be printed.' },
};
