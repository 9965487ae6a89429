import type { PictureFacts } from './picture';

/** Messages between the pool (parent) and a reader (forked child), advanced serialisation. */
export type ReaderRequest =
  | { id: number; kind: 'facts'; file: string; sha256?: string }
  | { id: number; kind: 'raster'; file: string; page: number; longEdge: number };

/** A picture for showing, sRGB, never for judging. */
export interface Raster {
  width: number;
  height: number;
  /** Full size of the stored picture. */
  fullWidth: number;
  fullHeight: number;
  png: Uint8Array;
}

export type ReaderReply =
  | { id: number; ok: true; kind: 'facts'; facts: PictureFacts[] }
  | { id: number; ok: true; kind: 'raster'; raster: Raster }
  | { id: number; ok: false; message: string };
