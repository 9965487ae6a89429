// no-unit-test: types only
import type { Loss } from '../../rules/unasked';
import type { Intent, PictureFacts } from '../../shared/picture';
import type { Remedied, RemedyFormat, RemedyWish } from '../../shared/remedy';

/** A picture that was named, or found in a named folder. */
export interface Asked {
  /** Relative to the book's root, forward slashes. */
  path: string;
  /** Absolute, links resolved. */
  file: string;
  /** False: found in a folder. */
  named: boolean;
  /** It is to be converted whatever would go with that: it was asked for by itself, or all were. */
  meant: boolean;
  /** The link it was named by. */
  link: string | null;
  /** What was read of it, page by page. */
  pages: readonly PictureFacts[];
  /** Its header promises that its luminance can stay as it is coded. */
  luminance: boolean;
  /** What its own record says of the conversion that made it. */
  remedied: Remedied | null;
  /** What the settings say it is meant to be, or the default where they say nothing of it. */
  intent: Intent;
  intentStated: boolean;
  /** Nobody may write it. */
  isProtected: boolean;
  /** How many more names the file has (hard links) than are meant here. */
  otherNames: number;
  /** How many of its names are meant here, this one too. */
  namesMeant: number;
  /** The wish, by its key, whose result in place it is; null: it is none. */
  replacedBy: string | null;
}

/** Where results go. */
export type Place =
  | { kind: 'beside' }
  | { kind: 'in-place' }
  /** Absolute, links resolved; `shown`: as it was named. */
  | { kind: 'folder'; folder: string; shown: string };

/** What is to be written for a picture. */
export interface Order {
  /** Absolute. */
  output: string;
  /** The same for people. */
  shown: string;
  format: RemedyFormat;
  bits: 8 | 16;
  /** What is asked for, with the format where it is not left to the picture. */
  wish: RemedyWish;
  /** Why it is another format than the picture's, unasked; null where it is not, or where `told` says so. */
  change: string | null;
  /** What a person should know of the names, and of a format that layouts want. */
  told: string[];
}

/** A picture that goes into the folder for the results as it is. */
export type Copy = Pick<Order, 'output' | 'shown' | 'told'>;

export type Decision =
  | { asked: Asked; do: 'convert'; order: Order }
  /** Right already, and to lie among the results all the same. */
  | { asked: Asked; do: 'copy'; order: Copy }
  /** `loses`: it stays since nobody said that this of it may go. */
  | { asked: Asked; do: 'skip'; reason: string; loses?: Loss }
  | { asked: Asked; do: 'refuse'; reason: string };
