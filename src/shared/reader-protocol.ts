// no-unit-test: types only
import type { ChildReply, ChildRequest } from './child-protocol';
import type { Detail, Marks, PixelReading, SeenBox } from './look';
import type { PictureFacts } from './picture';

/** A picture's content: a file's, if nothing else is said. */
export interface Content {
  file: string;
  /** Its hash where it is known, which saves the hashing. */
  sha256?: string;
  /** What the person knows it by, where the file is only where it lies for now: a path. */
  called?: string;
  /** Only these bytes of the file: others lie in it too. */
  stretch?: Stretch;
  /** What git calls it, by either of its hashes: a file that holds something else is not meant. */
  oid?: string;
}

/** A content that is only looked at: what it is called elsewhere is of no account. */
export type Shown = Pick<Content, 'file' | 'called' | 'stretch'>;

/** Bytes of a file. */
export interface Stretch {
  start: number;
  size: number;
}

/** What is known of a content. */
export interface FactsTask extends Content {
  kind: 'facts';
}

/** What a reader is asked. */
export type ReaderTask =
  | FactsTask
  /** To be ready for work that may come: no file is read. */
  | { kind: 'rehearse' }
  /** Names of its pages' pixels, to see whether two pictures are one. */
  | ({ kind: 'pixels' } & Shown)
  | ({ kind: 'raster'; page: number; longEdge: number } & Shown)
  | { kind: 'small'; file: string; page: number; edges: readonly number[] }
  | { kind: 'detail'; file: string; page: number; box: SeenBox; longEdge: number }
  | { kind: 'pixel'; file: string; page: number; x: number; y: number }
  | { kind: 'marks'; file: string; page: number; longEdge: number };

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

/** A picture that is one of many on a page: sRGB in a file format that browsers know. */
export interface SmallPicture extends Pick<Raster, 'fullWidth' | 'fullHeight'> {
  type: 'image/jpeg';
  bytes: Uint8Array;
}

export interface FactsDone {
  kind: 'facts';
  /** Null: the file holds another content than was meant. */
  facts: PictureFacts[] | null;
}

export type ReaderDone =
  | FactsDone
  | { kind: 'rehearse' }
  | { kind: 'pixels'; digests: (string | null)[] }
  | { kind: 'raster'; raster: Raster }
  | { kind: 'small'; sizes: SmallPicture[] }
  | { kind: 'detail'; detail: Detail }
  | { kind: 'pixel'; pixel: PixelReading }
  | { kind: 'marks'; marks: Marks };

export type ReaderRequest = ChildRequest<ReaderTask>;
export type ReaderReply = ChildReply<ReaderDone>;
