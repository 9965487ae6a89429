// no-unit-test: types only
import type { PictureFacts } from './picture';

/** Messages between the pool (parent) and a reader (forked child), advanced serialisation. */
export type ReaderRequest =
  | { id: number; kind: 'facts'; file: string; sha256?: string }
  | { id: number; kind: 'raster'; file: string; page: number; longEdge: number };

/** A picture for showing, sRGB, never for judging. */
export interface Raster {
  /** Shown size, upright. */
  width: number;
  height: number;
  /** EXIF orientation (1-8) that was applied: places in facts are boxes of the raster as stored. */
  orientation: number;
  /** Full size of the stored picture. */
  fullWidth: number;
  fullHeight: number;
  png: Uint8Array;
}

export type ReaderReply =
  | { id: number; ok: true; kind: 'facts'; facts: PictureFacts[] }
  | { id: number; ok: true; kind: 'raster'; raster: Raster }
  /** The decoder has loaded: sent once, before anything else. */
  | { kind: 'ready' }
  /** How large the task is, which sets its deadline: once the file is open, and again with its pixels counted. */
  | { id: number; kind: 'size'; megabytes: number; megapixels: number }
  | { id: number; ok: false; message: string };
