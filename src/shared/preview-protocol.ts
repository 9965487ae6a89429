// no-unit-test: types only
import type { Facing } from './facing';
import type { Detail, Marks, PixelReading, SeenBox } from './look';
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
  /** `png`: sRGB, upright by its EXIF orientation, made small for showing; `fullWidth`, `fullHeight`: as it is stored. */
  | {
      type: 'raster';
      png: Uint8Array<ArrayBuffer>;
      orientation: number;
      fullWidth: number;
      fullHeight: number;
    }
  /** What somebody looks at closely, as it was asked for. */
  | { type: 'detail'; detail: Detail }
  | { type: 'pixel'; pixel: PixelReading }
  | { type: 'marks'; marks: Marks }
  | { type: 'no-look'; message: string }
  | { type: 'facing'; facing: Facing }
  /** CSS pixels on an inch of this screen as the person has measured it; null: nobody has. */
  | { type: 'screen'; ppi: number | null }
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
  /** Looks closely; an answer to an earlier question of the same kind is not wanted any more. */
  | { type: 'detail'; box: SeenBox; longEdge: number }
  | { type: 'pixel'; x: number; y: number }
  | { type: 'marks' }
  /** What stands on the same spread? */
  | { type: 'facing' }
  /** The person has measured the screen: CSS pixels on an inch. */
  | { type: 'screen'; ppi: number }
  /** Another picture of the book, by its path relative to the root. */
  | { type: 'open'; path: string }
  /** What would come of it? An answer to an earlier question is not wanted any more. */
  | ({ type: 'candidate' } & Made)
  | { type: 'methods' }
  /** The person wants a file written that its layouts can place, and placed. */
  | { type: 'place' }
  /** The person wants it written: asked where, then done. */
  | ({ type: 'convert' } & Made);
