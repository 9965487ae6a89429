// no-unit-test: types only
import type { Severity } from './finding';
import type { Encoding } from './picture';
import type { SmallPicture } from './reader-protocol';
import type { Advice, ShownFinding } from './sheet';

/** What a picture asks for, in the order in which a person wants to know it; `fix`: its file can be made better. */
export type Doing = 'fix' | 'ask' | 'send' | 'leave';

/** A book on one screen: words, counts and one entry a picture. What is drawn of a picture comes apart, once it is seen. */
export interface Overview {
  /** Whether the book can be ordered as it is, and what to do first; null: nothing. */
  verdict: string;
  begin: string | null;
  /** `13 pictures: 6 errors, 1 warning, 3 notes.` */
  closing: string;
  /** How it is printed, a line a target. */
  targets: string[];
  /** What holds for the book as a whole, said once. */
  shared: ShownFinding[];
  /** What was not judged, judged as something else, or left out: plain sentences. */
  remarks: string[];
  facets: Facet[];
  /** In the book's order: what faces each other stands together, as indices into `pictures`. */
  spreads: number[][];
  pictures: OverviewPicture[];
}

/** What pictures are told apart by: each value with the number of pictures that have it. */
export interface Facet {
  id: FacetId;
  /** Of the whole facet, such as `Encoding`. */
  name: string;
  values: { id: string; name: string; count: number; severity: Severity | null }[];
}

export type FacetId = 'doing' | 'rule' | 'encoding' | 'part' | 'target';

export interface OverviewPicture {
  path: string;
  /** From 1. */
  page: number;
  /** Changes with the file's content. */
  content: string;
  encoding: Encoding;
  doing: Doing;
  advice: Advice;
  /** Why it is likely to be seen among the others, in a few words; null where it is not. */
  outlier: string | null;
  /** The values that it has of each facet. */
  has: Record<FacetId, string[]>;
}

/** What is drawn of one picture. */
export interface Contact {
  /** Null: not asked for, or not to be shown; then `trouble` says why. */
  small: SmallPicture | null;
  trouble: string | null;
  /**
   * What becomes of a pixel's red, green and blue in possible orders, the same orders for all pictures: tables of evenly
   * spaced values, 0-1. Null where nothing is forecast.
   */
  drawings: [red: number[], green: number[], blue: number[]][] | null;
  /** One light grey of it in ten possible orders, `#rrggbb`; empty where nothing is forecast. */
  greys: string[];
}

/** A page of a picture of the book. */
export interface PictureKey {
  path: string;
  page: number;
}

/** From the editor to the page. */
export type ToBookPage =
  /** `root`: which book it is, for the page's own state; `folder`: what its folder is called. */
  | { type: 'overview'; root: string; folder: string; overview: Overview }
  /** Nothing can be shown, or not yet; a button leads on. */
  | { type: 'empty'; words: string; action: { id: 'check' | 'settings'; words: string } | null }
  /** The answer to one `want`, entry by entry. */
  | { type: 'contacts'; contacts: (PictureKey & Contact)[] }
  /** A check is on its way; empty: none is. */
  | { type: 'busy'; words: string }
  | { type: 'told'; words: string };

/** From the page to the editor. `ready` comes once, when the page listens. */
export type FromBookPage =
  | { type: 'ready' }
  /** `have`: its small picture is here already. */
  | { type: 'want'; pictures: (PictureKey & { have: boolean })[] }
  | { type: 'open'; path: string }
  | { type: 'convert'; paths: string[] }
  | { type: 'explain'; rule: string }
  | { type: 'export' }
  | { type: 'act'; action: 'check' | 'settings' };
