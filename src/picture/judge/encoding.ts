import type { Encoding, Level, Space } from '../../shared/picture';
import type { Tally } from '../pass/tally';
import type { ChromaJudgement } from './chroma';
import { THRESHOLDS } from './thresholds';

/**
 * How a picture stores its grey, in the order of the definition: by what is stored where that decides (one bit, one
 * channel, equal channels), else by its colour away from its own tone, and inks then by which of them are used. Lab
 * pictures that are not neutral go by the names of RGB, which is what they become.
 * @param full the sample value of a full ink, in the units of the levels
 */
export function encodingOf(
  space: Space,
  bits: number,
  full: number,
  tally: Tally,
  chroma: ChromaJudgement,
): Exclude<Encoding, 'unreadable'> {
  const plain = plainEncoding(space, bits, tally.spread);
  if (plain) return plain;
  if (space === 'lab' && isNeutralLab(tally)) return 'lab-neutral';
  if (isColour(chroma)) return 'colour';
  if (space === 'cmyk') return inksUsed(tally.levels, full);
  if (isToned(chroma)) return 'rgb-toned';
  return isOneHue(chroma) ? 'colour' : 'rgb-residual';
}

/**
 * The encoding where what is stored decides it without a look at colour; else null.
 * @param spread of RGB: largest difference between the channels of any one pixel, in steps of 1/255
 */
export function plainEncoding(
  space: Space,
  bits: number,
  spread: number,
): 'bilevel' | 'single-channel' | 'rgb-neutral' | null {
  if (space === 'grey') return bits === 1 ? 'bilevel' : 'single-channel';
  return space === 'rgb' && spread <= THRESHOLDS.neutralSpread ? 'rgb-neutral' : null;
}

function isNeutralLab({ levels }: Tally): boolean {
  const most = THRESHOLDS.neutralLab;
  return levels.slice(1).every(({ min, max }) => min >= -most && max <= most);
}

function isColour({ facts, strong, clear, pixelResidual }: ChromaJudgement): boolean {
  const limits = THRESHOLDS;
  if (facts.mean >= limits.vivid || pixelResidual >= limits.colourNoise) return true;
  return strong >= limits.strongShare || clear >= limits.clearShare;
}

/** A coloured picture all of one hue whose colour yet is no tone: mist, water, leaves. */
function isOneHue({ facts }: ChromaJudgement): boolean {
  return facts.mean >= THRESHOLDS.oneHue && facts.share >= THRESHOLDS.oneHueShare;
}

/** Whether what strays away from edges is no more than a codec leaves of the picture's tone. */
function isSmooth({ tone, smooth }: ChromaJudgement): boolean {
  return smooth <= Math.min(THRESHOLDS.smoothMost, THRESHOLDS.smoothOfTone * tone);
}

function isToned(judgement: ChromaJudgement): boolean {
  const { facts, tone, limit } = judgement;
  const limits = THRESHOLDS;
  if (tone < limits.toned) return false;
  if (facts.maxBlock <= limit + Math.min(limits.tonedSlack * facts.mean, limits.tonedSlackMost)) return true;
  // a codec smears only a tone that runs through the picture
  if (facts.mean < limits.toned) return false;
  const most = limit + limits.smear.ofMean * facts.mean + limits.smear.ofTone * tone;
  return facts.maxBlock <= Math.min(most, limits.smearMost) && isSmooth(judgement);
}

function inksUsed(levels: readonly Level[], full: number): 'black-only' | 'three-ink' | 'four-channel' {
  const absent = ({ max }: Level) => max / full <= THRESHOLDS.absentInk;
  const [cyan, magenta, yellow, black] = levels;
  if ([cyan, magenta, yellow].every(absent)) return 'black-only';
  return absent(black) ? 'three-ink' : 'four-channel';
}
