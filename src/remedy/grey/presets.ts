import type { GreyMethod } from '../../shared/remedy';

/** A channel mix by what it does to a picture. */
export interface GreyPreset {
  id: string;
  /** What it does, as a list shows it. */
  does: string;
  /** Why the weights do that. */
  why: string;
  method: GreyMethod & { kind: 'mix' };
}

const mix = (red: number, green: number, blue: number) => ({ kind: 'mix', red, green, blue }) as const;

/**
 * Channel mixes by their effect; the weights (of sRGB's linear channels) are our own choice, as much as can be had
 * without making noise or edges plain. The test holds each to what it says.
 */
export const greyPresets: readonly GreyPreset[] = [
  {
    id: 'darker-sky',
    does: 'Darkens a blue sky, so that clouds stand out; skin and brick become lighter',
    why: 'mostly red, of which a blue sky holds least',
    method: mix(0.8, 0.3, -0.1),
  },
  {
    id: 'lighter-sky',
    does: 'Lightens sky, water and haze; red lips, brick and freckles become darker',
    why: 'much blue, of which sky and haze hold most',
    method: mix(0.05, 0.55, 0.4),
  },
  {
    id: 'lighter-skin',
    does: 'Lightens skin and evens out its redness',
    why: 'more red, in which skin is light and its blemishes are faint',
    method: mix(0.55, 0.4, 0.05),
  },
  {
    id: 'darker-skin',
    does: 'Darkens skin and brings out its texture and weather',
    why: 'little red: what the skin holds of blood turns dark',
    method: mix(0, 0.8, 0.2),
  },
  {
    id: 'lighter-foliage',
    does: 'Lightens leaves and grass against trunks, stone and sky',
    why: 'more green and less blue, of which leaves hold least',
    method: mix(0.15, 1.05, -0.2),
  },
  {
    id: 'darker-foliage',
    does: 'Darkens leaves and grass against skin, stone and sky',
    why: 'little green, of which leaves hold most',
    method: mix(0.45, 0.2, 0.35),
  },
];
