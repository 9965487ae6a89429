import type { Space } from '../shared/picture';
import type { RouteId } from '../shared/target';
import { type BlackGeneration, blackGenerations } from './inks/separation';

/** What a print house does with the numbers of a file. */
export type Handling =
  /** Sends the stored R, G, B, or the stored inks, to the press. */
  | { kind: 'kept' }
  /** Writes the grey value into black ink: K = 1 - grey. */
  | { kind: 'grey-to-black' }
  /** Replaces the picture by black ink of the same lightness. */
  | { kind: 'lightness-to-black' }
  /** Separates the picture's colour into four inks. */
  | { kind: 'separated'; generation: BlackGeneration }
  /** Turns the picture's colour into R, G, B. */
  | { kind: 'to-rgb' };

export interface RouteOption {
  route: Exclude<RouteId, 'unknown'>;
  label: string;
  /** Among the options of an unknown route; they add up to 1. Own guesses: nobody publishes such figures. */
  weight: number;
  handling: Handling;
}

/** How much of an unknown route is which, by what the file holds. Own guesses, stated with every forecast. */
const UNKNOWN = {
  grey: { 'black-plate': 0.6, separated: 0.4 },
  rgb: { separated: 0.85, 'black-plate': 0.15 },
  toned: { separated: 1 },
  cmyk: { inks: 0.6, separated: 0.4 },
} as const;

/**
 * What may happen to a file of this kind on a press that takes inks or R, G, B. A route that cannot apply (ink values
 * kept of an RGB file) gives way to the one that print houses then use. `neutral`: a picture without any colour, which
 * alone can be taken for a grey one by the house. `generations`: the separations that the press may use.
 */
export function routeOptions(
  signal: 'inks' | 'rgb',
  route: RouteId,
  space: Space,
  neutral: boolean,
  generations: readonly BlackGeneration[] = blackGenerations,
): RouteOption[] {
  if (signal === 'rgb') return [photographic(space)];
  const kind = space === 'cmyk' || space === 'grey' ? space : neutral && space === 'rgb' ? 'rgb' : 'toned';
  if (route === 'unknown')
    return Object.entries(UNKNOWN[kind]).flatMap(([name, weight]) =>
      optionsOf(name as Exclude<RouteId, 'unknown'>, space, generations).map(o => ({
        ...o,
        weight: o.weight * weight,
      })),
    );
  return optionsOf(route, space, generations);
}

function optionsOf(
  route: Exclude<RouteId, 'unknown'>,
  space: Space,
  generations: readonly BlackGeneration[],
): RouteOption[] {
  if (route === 'inks' && space === 'cmyk')
    return [{ route, label: 'ink values kept', weight: 1, handling: { kind: 'kept' } }];
  if (space === 'grey' && (route === 'inks' || route === 'black-plate'))
    return [
      {
        route: 'black-plate',
        label: 'grey values kept, on the black plate',
        weight: 1,
        handling: { kind: 'grey-to-black' },
      },
    ];
  if (route === 'black-plate')
    return [
      {
        route,
        label: 'turned into black ink of the same lightness',
        weight: 1,
        handling: { kind: 'lightness-to-black' },
      },
    ];
  return generations.map(generation => ({
    route: 'separated',
    label: `separated: ${generation.label}`,
    weight: generation.weight,
    handling: { kind: 'separated', generation },
  }));
}

function photographic(space: Space): RouteOption {
  if (space === 'rgb') return { route: 'rgb', label: 'R, G, B kept', weight: 1, handling: { kind: 'kept' } };
  const label =
    space === 'cmyk'
      ? 'inks turned into R, G, B by the print house, through a press profile'
      : 'turned into R, G, B by the print house';
  return { route: 'rgb', label, weight: 1, handling: { kind: 'to-rgb' } };
}
