// no-unit-test: types only
import type { ProcessId, RouteId } from './target';

/** Position in the CIELAB a*b* plane, or a standard deviation along its axes. */
export interface AB {
  a: number;
  b: number;
}

/** Probabilities of dCh below 1, 1-2, 2-4, 4-7, above 7. They add up to 1. */
export interface Bands {
  neutral: number;
  faint: number;
  visible: number;
  obvious: number;
  heavy: number;
}

export type Direction = 'warm' | 'greenish' | 'bluish' | 'pinkish';

/** `generic`: priors or generic dyes; `data`: measured data of such a process; `profile`, `record`: of this print house. */
export type Basis = 'generic' | 'data' | 'profile' | 'record';

export interface ForecastZone {
  /** The file's lightness. */
  L: number;
  weight: number;
  /** Absolute CIELAB of the print, adapted to D50 under another light. */
  Lprint: number;
  a: number;
  b: number;
  aimA: number;
  aimB: number;
  /** Spread of the tint in this zone, houses, orders and pages together. */
  sdA: number;
  sdB: number;
  corr: number;
}

export interface Tint {
  a: number;
  b: number;
  /** Length of the mean tint. */
  chroma: number;
  /** Hue angle of the mean tint, degrees 0-360. */
  hue: number;
  /** Null: no predictable direction. */
  direction: Direction | null;
  /** Probability that dCh >= 1 and the hue lies within 45 degrees of the mean hue. */
  directionProbability: number;
  /** Of all that a picture prints: each zone's own probabilities, weighed by area and visibility. */
  bands: Bands;
  /**
   * Probability that one order shows a tint of dCh >= 2 on a noticeable part of the picture (a quarter of it, by area
   * and visibility), and the same of an obvious one, dCh >= 4.
   */
  seen: number;
  seenObvious: number;
}

/**
 * One standard deviation along a* and b*: from one print house to another, with what no data tell of either; from order
 * to order of one house; from page to page of one order. `corr`: correlation of a* and b*, all together.
 */
export interface Spread {
  house: AB;
  order: AB;
  page: AB;
  corr: number;
}

/** What one route contributes when the route is not known. */
export interface RouteForecast {
  route: Exclude<RouteId, 'unknown'>;
  label: string;
  weight: number;
  /** L* of the print, the mean over the picture's area, and of the darkest black by this way. */
  Lprint: number;
  black: number;
  tint: Tint;
  spread: Spread;
}

export interface Forecast {
  condition: {
    process: ProcessId;
    /** Paper id, or `measured`. */
    paper: string;
    light: string;
    route: RouteId;
    basis: Basis;
    /**
     * Which reading of the print house's record it rests on: of greys stored like these, or of an encoding that goes the
     * same way through the machine; null for none. Chances by different readings say nothing of each other.
     */
    reading: 'own' | 'alike' | null;
  };
  zones: ForecastZone[];
  /** Relative to the grey aim of the paper under the same light. */
  tint: Tint;
  /** Relative to true neutral, as seen beside another paper. absolute = tint + paper. */
  absolute: AB;
  /** Of several routes: within one of them, on the mean. The paper's own apart: it widens `absolute` only. */
  spread: Spread & { paper: AB };
  /** tint = process + encoding + light, exactly. */
  parts: { paper: AB; process: AB; encoding: AB; light: AB };
  /**
   * `parts.light` = colourants + brightener, exactly: what the light makes of inks or dyes and paper with the brightener
   * shining as under D50 (metamerism), and what comes of the light's other share of ultraviolet.
   */
  lightParts: { colourants: AB; brightener: AB };
  range: {
    /**
     * L* of the darkest black that this encoding can print: by the likeliest way of the house, which is the one that
     * keeps the file's encoding where there is one.
     */
    black: number;
    /** The same by the way with the deepest black, and by that with the weakest. */
    blackDeepest: number;
    blackWeakest: number;
    /** The black was read from the print house's prints, not worked out. */
    blackRead: boolean;
    /** L* of the paper. */
    white: number;
    /** Share of the picture (0-1) too dark to be told from black. */
    blockedShare: number;
    /** The same without the file's own black (its darkest tone in its encoding): share whose shades are lost. */
    closedShare: number;
    /** Steps of L* 1 that the picture uses and that come out as black. */
    lostSteps: number;
  };
  routes?: RouteForecast[];
  /** What was asked for and sets this forecast apart, or changes nothing in it: plain sentences, said first. */
  notes: string[];
  /** Where the figures come from and what is a guess: plain sentences. */
  ground: string[];
}
