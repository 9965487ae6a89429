// no-unit-test: types only
import type { BeforeAndAfter, Made, MethodPictures, Remedies } from './remedies';
import type { Sheet } from './sheet';
import type { LightId } from './target';

/** What the preview is asked to show; survives in the page's own state. */
export interface PreviewWish {
  /** From 1. */
  page: number;
  light: LightId | null;
  series: number;
}

/** From the editor to the page. */
export type ToPage =
  | { type: 'sheet'; sheet: Sheet }
  /** `png`: sRGB, made small for showing; `fullWidth`, `fullHeight`: of the stored picture. */
  | { type: 'raster'; png: Uint8Array<ArrayBuffer>; fullWidth: number; fullHeight: number }
  /** The picture cannot be shown; its sheet says why. */
  | { type: 'no-raster'; message: string }
  | { type: 'trouble'; message: string }
  /** Comes with every sheet. `writable`: results can be written beside the picture. */
  | { type: 'remedies'; remedies: Remedies; writable: boolean }
  /** PNGs have buffers of their own. */
  | { type: 'candidate'; candidate: BeforeAndAfter }
  | { type: 'no-candidate'; message: string }
  | { type: 'methods'; pictures: MethodPictures }
  | { type: 'no-methods'; message: string }
  /** What came of a conversion, with its proof, in words. */
  | { type: 'converted'; words: string };

/** From the page to the editor. `ready` comes once, when the page listens: nothing sent before it would arrive. */
export type FromPage =
  | ({ type: 'ready' } & PreviewWish)
  | ({ type: 'wish' } & PreviewWish)
  | { type: 'explain'; rule: string }
  /** What would come of it? An answer to an earlier question is not wanted any more. */
  | ({ type: 'candidate' } & Made)
  | { type: 'methods' }
  /** The person wants it written: asked where, then done. */
  | ({ type: 'convert' } & Made);
