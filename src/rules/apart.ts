import { type Apart, apart, SEEN_APART, type Tints, tintsOf } from '../print/apart';
import { directionOfHue, hueOf } from '../print/bands';
import type { BookPicture } from '../shared/finding';
import type { Direction } from '../shared/forecast';
import type { Target } from '../shared/target';
import type { OptionSchema } from './rule';
import { forecastsOf } from './targets';

/** From this length on a difference in a*, b* has a direction worth naming. Own choice. */
const DIRECTED = 1;

/** From when on two tints are told of as different. */
export interface ApartOptions {
  limit: number;
  chance: number;
}

/** The options of a rule that tells tints apart; `limit` says what its limit is. */
export const apartOptions = (limit: string): OptionSchema => ({
  type: 'object',
  additionalProperties: false,
  properties: {
    limit: { type: 'number', minimum: 0.5, default: SEEN_APART, description: limit },
    chance: {
      type: 'number',
      minimum: 0.1,
      maximum: 1,
      default: 0.5,
      description: 'Probability (0-1) of that distance from which a picture is named.',
    },
  },
});

/** Tints of a picture on each target that it has a forecast for. */
export const tintsByTarget = (picture: BookPicture): { target: Target; tints: Tints }[] =>
  forecastsOf(picture).map(({ target, forecast }) => ({ target, tints: tintsOf(forecast) }));

/** Two pictures on every target that both are printed on. */
export function apartOnTargets(
  one: BookPicture,
  other: BookPicture,
  limit: number,
): { target: Target; apart: Apart }[] {
  const others = new Map(tintsByTarget(other).map(({ target, tints }) => [target.name, tints]));
  return tintsByTarget(one).flatMap(({ target, tints }) => {
    const beside = others.get(target.name);
    const told = beside && apart(tints, beside, limit);
    return told ? [{ target, apart: told }] : [];
  });
}

const comparatives: Record<Direction, string> = {
  warm: 'warmer',
  greenish: 'more greenish',
  bluish: 'more bluish',
  pinkish: 'more pinkish',
};

/** `warmer`: which way a picture lies from another; null where the two only differ from order to order. */
export function towards({ difference: { a, b } }: Apart): string | null {
  return Math.hypot(a, b) < DIRECTED ? null : comparatives[directionOfHue(hueOf(a, b))];
}
