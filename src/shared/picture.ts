// no-unit-test: types only
/** What is known of a picture: words shared by every folder. Types only. */
import type { Remedied } from './remedy';

/** How a picture stores its grey. Judged on every pixel at full size. */
export type Encoding =
  | 'single-channel'
  | 'rgb-neutral'
  | 'rgb-residual'
  | 'rgb-toned'
  | 'black-only'
  | 'four-channel'
  | 'three-ink'
  | 'bilevel'
  | 'lab-neutral'
  | 'colour'
  | 'unreadable';

/** What the designer means a picture to be. */
export type Intent = 'grey' | 'toned' | 'colour' | 'line';

/** The colour model of the stored channels, alpha left out. */
export type Space = 'grey' | 'rgb' | 'cmyk' | 'lab';

/** File formats known by content. Those that cannot be read end as `unreadable`, by name. */
export type Format =
  | 'jpeg'
  | 'png'
  | 'tiff'
  | 'webp'
  | 'avif'
  | 'gif'
  | 'psd'
  | 'bmp'
  | 'heic'
  | 'jp2'
  | 'svg'
  | 'pdf'
  | 'lfs-pointer'
  | 'unknown';

export interface ProfileFacts {
  description: string;
  /** The profile's data colour space. */
  space: Space;
  /** ICC device class in words: `display`, `output`, `input`, `colour space`, ... */
  class: string;
  /** Largest C* of the profile's own grey axis (R=G=B); null where it was not computed. */
  greyAxisChroma: number | null;
}

/** One stored channel over all opaque pixels, native units; CMYK in ink sense (0 = no ink), grey with 0 = black. */
export interface Level {
  min: number;
  max: number;
  mean: number;
}

export interface Place {
  /** Box in pixels of the stored raster. */
  x: number;
  y: number;
  width: number;
  height: number;
  /** Strongest distance (CIELAB, a*b* plane) from the picture's own tone line inside the box. */
  max: number;
}

export interface ChromaFacts {
  /** Largest C* of any pixel, CIELAB D50; to about 1 where RGB differ by more than 32, and in inks of very many mixes. */
  max: number;
  /** Mean C* over all opaque pixels. */
  mean: number;
  /** Share (0-1) of the area (8 x 8 blocks) that strays from the tone line by more than the limit. */
  share: number;
  /** Mean hue angle of the picture's chroma in degrees (0-360); null where there is none to speak of. */
  hue: number | null;
  /** Residual chroma per lightness: median a*, b* (the tone line) and the mean distance from it. */
  zones: { L: number; weight: number; a: number; b: number; residual: number }[];
  /** Boxes of left-over colour, strongest first, at most 16; none where most of the picture strays. */
  places: Place[];
  /** Largest distance of an 8 x 8 block from the tone line. */
  maxBlock: number;
  /** Largest distance of a single pixel from the tone line: small hard marks. */
  maxPixel: number;
}

/** Up to three clusters of stored values within one lightness zone. */
export interface Cluster {
  /** Share (0-1) of the zone. */
  weight: number;
  /** Mean of the stored channels: grey and RGB 0-1 (0 = black), CMYK ink 0-1, Lab in natural units. */
  mean: number[];
  /** Covariance of the same, row by row (n x n). */
  covariance: number[];
}

/** A lightness zone of the picture; at most 16. Enough for every forecast, so that no target decodes again. */
export interface Zone {
  /** Mean L* of the file in this zone, CIELAB D50. */
  L: number;
  a: number;
  b: number;
  /** Share of the opaque area, 0-1. */
  weight: number;
  clusters: Cluster[];
}

/** Something worth telling that is no verdict, e.g. "transparent pixels composited on paper white". */
export interface Remark {
  code:
    | 'transparent'
    | 'wrong-extension'
    | 'no-ink-marker'
    | 'min-is-white'
    | 'spot-inks'
    | 'orientation'
    | 'float-range'
    | 'embedded-preview'
    | 'bad-profile'
    | 'monochrome-container';
  text: string;
}

export interface Unreadable {
  reason:
    | 'empty'
    | 'truncated'
    | 'corrupt'
    | 'too-large'
    | 'format'
    | 'not-a-file'
    | 'outside'
    | 'permission'
    | 'timeout'
    | 'crashed'
    | 'not-fetched'
    | 'missing';
  /** What is wrong and what to do, one or two plain sentences. */
  text: string;
}

/** What was read from one page of one file. No opinion, no path: two equal files have equal facts. */
export interface PictureFacts {
  /** From 1. */
  page: number;
  sha256: string;
  format: Format;
  width: number;
  height: number;
  /** Without alpha. */
  channels: number;
  bits: number;
  alpha: boolean;
  palette: boolean;
  space: Space | null;
  encoding: Encoding;
  profile: ProfileFacts | null;
  /** What was assumed about the meaning of the numbers where no usable profile says it, in words; null otherwise. */
  assumed: string | null;
  /** Pixels per inch from the file's own header. */
  ppi: { x: number; y: number } | null;
  /** EXIF orientation 1-8; the raster itself is never turned. */
  orientation: number;
  /** What its own XMP says of the remedy that made it; null where none did. */
  remedied: Remedied | null;
  levels: Level[];
  chroma: ChromaFacts | null;
  /** Ink totals in percent (0-400); null without inks. */
  ink: { maxTotal: number; meanTotal: number } | null;
  /** L* of the darkest and lightest opaque pixel and the share of the area per L* step of 1 (101 bins, 0-100). */
  tone: {
    darkest: number;
    lightest: number;
    histogram: number[];
    /** Shares (0-1) of the area cut off at white and at black, small spots and the frame of a film left out. */
    clipped?: { lights: number; shadows: number };
  } | null;
  zones: Zone[];
  remarks: Remark[];
  /** Set if and only if `encoding` is `unreadable`. */
  unreadable: Unreadable | null;
}
