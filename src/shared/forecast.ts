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
  /** Spread of the tint in this zone, order and page scatter together. */
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
  bands: Bands;
}

/** What one route contributes when the route is not known. */
export interface RouteForecast {
  route: Exclude<RouteId, 'unknown'>;
  label: string;
  weight: number;
  tint: Tint;
  /** `corr`: correlation of a* and b*, order and page together. */
  spread: { order: AB; page: AB; corr: number };
}

export interface Forecast {
  condition: {
    process: ProcessId;
    /** Paper id, or `measured`. */
    paper: string;
    light: string;
    route: RouteId;
    basis: Basis;
  };
  zones: ForecastZone[];
  /** Relative to the grey aim of the paper under the same light. */
  tint: Tint;
  /** Relative to true neutral, as seen beside another paper. absolute = tint + paper. */
  absolute: AB;
  /**
   * One standard deviation: shared by a whole order, and within it; the paper's own apart. `corr`: correlation of a* and
   * b*, order and page together. Of several routes: within one of them, on the mean.
   */
  spread: { order: AB; page: AB; paper: AB; corr: number };
  /** tint = process + encoding + light, exactly. */
  parts: { paper: AB; process: AB; encoding: AB; light: AB };
  /**
   * `parts.light` = colourants + brightener, exactly: what the light makes of inks or dyes and paper with the brightener
   * shining as under D50 (metamerism), and what comes of the light's other share of ultraviolet.
   */
  lightParts: { colourants: AB; brightener: AB };
  range: {
    /** L* of the darkest printable black with this encoding, and of the paper. */
    black: number;
    white: number;
    /** Share of the picture (0-1) too dark to be told from black. */
    blockedShare: number;
    /** The same without the file's own black (its darkest tone in its encoding): share whose shades are lost. */
    closedShare: number;
    /** Steps of L* 1 that the picture uses and that come out as black. */
    lostSteps: number;
  };
  routes?: RouteForecast[];
  /** Where the figures come from and what is a guess: plain sentences. */
  ground: string[];
}
