import { defaultTarget, forecastPicture } from '../../../src/print';
import type { BookPicture } from '../../../src/shared/finding';
import type {
  Encoding,
  PictureFacts,
  Place,
  ProfileFacts,
  Space,
  Unreadable,
} from '../../../src/shared/picture';
import type { GreyEncoding, PrintRecord, ProcessId, Target } from '../../../src/shared/target';

/** A target of a process, everything else at its default. */
export const target = (process: ProcessId, changes: Partial<Target> = {}): Target => ({
  ...defaultTarget(process),
  ...changes,
});

const spaces: Record<Encoding, Space | null> = {
  'single-channel': 'grey',
  bilevel: 'grey',
  'rgb-neutral': 'rgb',
  'rgb-residual': 'rgb',
  'rgb-toned': 'rgb',
  colour: 'rgb',
  'black-only': 'cmyk',
  'three-ink': 'cmyk',
  'four-channel': 'cmyk',
  'lab-neutral': 'lab',
  unreadable: null,
};

/** A record of a house whose prints were plainly bluish, b* -5, of three orders sent in one encoding. */
export const record = (
  process: ProcessId,
  black: number | null = null,
  encoding: GreyEncoding = 'rgb-neutral',
): PrintRecord => ({
  process,
  paper: null,
  date: '2026-10-01',
  readings: [
    { encoding, orders: 3, greys: [{ L: 50, a: 0.4, b: -5 }], order: { a: 0.4, b: 0.4 }, page: null, black },
  ],
});

/** Stored value 0-1 of a grey: the sRGB curve (IEC 61966-2-1). */
function srgb(L: number): number {
  const Y = L > 8 ? ((L + 16) / 116) ** 3 : L / 903.3;
  return Y <= 0.0031308 ? 12.92 * Y : 1.055 * Y ** (1 / 2.4) - 0.055;
}

/** Stored channels of a grey of lightness L in an encoding; inks are the simplest ones that darken as much. */
function stored(encoding: Encoding, L: number, inks?: (darkness: number) => number[]): number[] {
  const v = srgb(L);
  switch (spaces[encoding]) {
    case 'grey':
      return [v];
    case 'lab':
      return [L, 0, 0];
    case 'cmyk':
      return (inks ?? (darkness => [0, 0, 0, darkness]))(1 - v);
    default:
      return [v, v, v];
  }
}

export interface PictureOptions {
  path?: string;
  intent?: BookPicture['intent'];
  intentStated?: boolean;
  part?: string | null;
  placed?: BookPicture['placed'];
  targets?: Target[];
  /** Lightnesses of the picture, of equal area. */
  tones?: number[];
  /** a*, b* of its own tone. */
  tone?: [number, number];
  /** Ink values 0-1 for a darkness 0-1. */
  inks?: (darkness: number) => number[];
  facts?: Partial<PictureFacts>;
}

const TONES = [8, 15, 22, 30, 38, 46, 54, 62, 70, 78, 86, 93];

let made = 0;

/** A readable picture with forecasts for its targets, silver halide unless told otherwise. */
export function picture(encoding: Encoding, options: PictureOptions = {}): BookPicture {
  const targets = options.targets ?? [target('silver-halide')];
  const facts = factsOf(encoding, options);
  return {
    path: options.path ?? `pictures/${String(++made).padStart(4, '0')}.tif`,
    facts,
    intent: options.intent ?? 'grey',
    intentStated: options.intentStated ?? options.intent !== undefined,
    part: options.part ?? null,
    targets,
    forecasts: targets.flatMap(t => forecastPicture(facts, t) ?? []),
    placed: options.placed ?? null,
  };
}

/** n pictures alike. */
export const pictures = (n: number, encoding: Encoding, options: PictureOptions = {}): BookPicture[] =>
  Array.from({ length: n }, () => picture(encoding, options));

function factsOf(encoding: Encoding, options: PictureOptions): PictureFacts {
  const tones = options.tones ?? TONES;
  const [a, b] = options.tone ?? [0, 0];
  const space = spaces[encoding];
  const weight = 1 / tones.length;
  const histogram = Array(101).fill(0);
  for (const L of tones) histogram[Math.round(L)] += weight;
  const zones = tones.map(L => {
    const mean = options.tone && space === 'rgb' ? tonedRgb(L, a, b) : stored(encoding, L, options.inks);
    return {
      L,
      a,
      b,
      weight,
      clusters: [{ weight: 1, mean, covariance: Array(mean.length ** 2).fill(0) }],
    };
  });
  const totals = zones.map(zone => zone.clusters[0].mean.reduce((sum, ink) => sum + ink * 100, 0));
  return {
    page: 1,
    sha256: '0'.repeat(64),
    format: 'tiff',
    width: 3000,
    height: 2000,
    channels: space === 'grey' ? 1 : space === 'cmyk' ? 4 : 3,
    bits: 8,
    alpha: false,
    palette: false,
    space,
    encoding,
    profile: null,
    assumed: null,
    ppi: null,
    orientation: 1,
    remedied: null,
    levels: [],
    chroma: { max: 0, mean: 0, share: 0, hue: null, zones: [], places: [], maxBlock: 0, maxPixel: 0 },
    ink: space === 'cmyk' ? { maxTotal: Math.max(...totals), meanTotal: totals[0] } : null,
    tone: { darkest: Math.min(...tones), lightest: Math.max(...tones), histogram },
    zones,
    remarks: [],
    unreadable: null,
    ...options.facts,
  };
}

/** sRGB 0-1 of a CIELAB D50 colour: IEC 61966-2-1 primaries adapted to D50 by Bradford, the usual matrix. */
function tonedRgb(L: number, a: number, b: number): number[] {
  const f = (t: number) => (t > 6 / 29 ? t ** 3 : (t - 16 / 116) * 3 * (6 / 29) ** 2);
  const fy = (L + 16) / 116;
  const [x, y, z] = [0.9642 * f(fy + a / 500), f(fy), 0.8249 * f(fy - b / 200)];
  const linear = [
    3.1338561 * x - 1.6168667 * y - 0.4906146 * z,
    -0.9787684 * x + 1.9161415 * y + 0.033454 * z,
    0.0719453 * x - 0.2289914 * y + 1.4052427 * z,
  ];
  return linear.map(v =>
    Math.min(1, Math.max(0, v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055)),
  );
}

/** A picture of which nothing could be read. */
export function unreadable(
  reason: Unreadable['reason'],
  text: string,
  options: PictureOptions = {},
): BookPicture {
  const whole = picture('unreadable', { ...options, tones: [50] });
  Object.assign(whole.facts, { zones: [], tone: null, chroma: null, unreadable: { reason, text } });
  return { ...whole, forecasts: [] };
}

/** Facts of left-over colour in one place. */
export const leftOver = (place: Place, share = 0.001): Partial<PictureFacts> => ({
  chroma: {
    max: place.max,
    mean: 0.1,
    share,
    hue: 30,
    zones: [],
    places: [place],
    maxBlock: place.max,
    maxPixel: place.max,
  },
});

export const profile = (description: string, space: Space): ProfileFacts => ({
  description,
  space,
  class: space === 'rgb' ? 'display' : 'output',
  greyAxisChroma: null,
});

/** Residual facts by lightness: [L*, a*, b*] of equal area. */
export const toneOf = (steps: [number, number, number][]): NonNullable<PictureFacts['chroma']>['zones'] =>
  steps.map(([L, a, b]) => ({ L, a, b, weight: 1 / steps.length, residual: 0 }));
