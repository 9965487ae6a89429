// no-unit-test: types only
import type { Encoding, PictureFacts } from './picture';

/** What a remedy can make of a picture. */
export type RemedyEncoding = Extract<Encoding, 'rgb-neutral' | 'single-channel' | 'black-only' | 'rgb-toned'>;

/** Formats that remedies write. */
export type RemedyFormat = 'jpeg' | 'tiff' | 'png';

/**
 * How colour becomes grey: by CIELAB L*, which is luminance on an even scale and keeps tones in their order; by luma, the
 * weights of ITU-R BT.709 on sRGB's stored values; or by weights of the linear channels (any numbers, made to add up
 * to 1).
 */
export type GreyMethod =
  | { kind: 'lightness' }
  | { kind: 'luma' }
  | { kind: 'mix'; red: number; green: number; blue: number };

/**
 * The tint of a toned result by lightness: the picture's own tone line with what strays from it removed; one tint
 * throughout, the picture's mean, which straightens a cast that turns; or a stated one. `counter`: it answers the tint of
 * a print house's prints, so that the print comes out grey.
 */
export type Tone =
  | { kind: 'own' }
  | { kind: 'even' }
  | { kind: 'stated'; a: number; b: number; counter?: true };

/** A tone curve over the file's lightness, L* 0-100 to L* 0-100: one value for each whole L*, 101 in all, rising. */
export type LightnessCurve = readonly number[];

/** What is asked of one picture. All defaults filled in. */
export interface RemedyWish {
  to: RemedyEncoding;
  grey: GreyMethod;
  /** Only colour of a CIELAB chroma below this is removed, what is stronger stays; null: all of it. `rgb-neutral` only. */
  below: number | null;
  /** Of `rgb-toned`. */
  tone: Tone;
  /** Lifts or compresses tones into a printable range; null: tones stay. */
  curve: LightnessCurve | null;
  /**
   * What black ink alone becomes in R, G, B and back: `scaled` maps 100 % K to black and back (black point
   * compensation, ISO 18619), `kept` keeps L*, so that full black ink becomes a dark grey.
   */
  blackPoint: 'scaled' | 'kept';
  /** Null: as the source stores them. JPEG has 8. */
  bits: 8 | 16 | null;
  /** Null: as the source where it can hold the result without rounding it anew as JPEG does, else TIFF. */
  format: RemedyFormat | null;
  /** Of JPEG, 1-100: it is written anew so. Null: its luminance stays as it is coded where that can be, else 100. */
  quality: number | null;
  /** Turns the pixels upright and resets the orientation tag; else the tag is kept. */
  upright: boolean;
  /** A grey ICC profile for `single-channel`; null: the tone curve of sRGB, with a profile that says so. */
  greyProfile: Uint8Array | null;
}

/** What a remedy goes by of what was read of its source. */
export type SourceFacts = Pick<PictureFacts, 'sha256' | 'encoding' | 'space' | 'chroma'>;

/** What a written file was found to be when it was read again. */
export interface RemedyProof {
  encoding: Encoding;
  /** Largest difference of any pixel's L* from the intended, and its mean: from the picture's own but for what was moved. */
  maxError: number;
  meanError: number;
  sha256: string;
  bytes: number;
}

/** How far lightness was moved from the picture's own on purpose, and by what. */
export interface Moved {
  /** L*: the most that any pixel was moved, and the mean. */
  maxMove: number;
  meanMove: number;
  /** The way from colour to grey, by its name or its weights; null: it moved nothing. */
  method: string | null;
  /** A curve, such as one that fits tones to a target, had a part in it. */
  fit: boolean;
  /** So had the scaling of the black point. */
  blackPoint: boolean;
}

/** What was made of one picture, before it has its name. */
export interface RemedyResult {
  /** SHA-256 of the source's bytes. */
  from: string;
  fromEncoding: Encoding;
  format: RemedyFormat;
  bits: 8 | 16;
  width: number;
  height: number;
  proof: RemedyProof;
  /** Null: nothing was moved on purpose. */
  moved: Moved | null;
  /** What a person should know: what was assumed, changed or lost. Plain sentences. */
  told: string[];
}

/** What a file's own XMP says of the remedy that made it; null in the facts of other files. */
export interface Remedied {
  /** SHA-256 of the picture that it was made from, hex. */
  from: string;
  to: RemedyEncoding;
  /** Its tint is meant: a counter-tint, or a stated tone. */
  toned: boolean;
  /** That tint answers the one of a print house's prints: the print is to be grey. */
  counter?: true;
  /** Its tones were fitted by a curve, by this remedy or by one before it. */
  fitted: boolean;
}
