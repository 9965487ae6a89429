// no-unit-test: types, and a function that hands back what it is given; test/rules/rules.test.ts checks every rule
import type { BookPicture, Severity } from '../shared/finding';
import type { Intent } from '../shared/picture';
import type { Target } from '../shared/target';
import type { Recommend } from './recommended';

/** What a rule is shown. */
export interface BookView {
  /** Those that it concerns, in the order of the book's paths. */
  pictures: readonly BookPicture[];
  /** The whole book, to look up what a picture refers to. */
  everything: readonly BookPicture[];
  targets: readonly Target[];
  /** Pictures that are seen side by side, by path: one list a spread. */
  spreads: readonly (readonly string[])[];
  /** Paths of pictures whose content changed, where that was looked at; else none. */
  changed: ReadonlySet<string>;
  /** The book has more pictures, which were not looked at. */
  partial: boolean;
  /** The encoding that every finding of this book names. */
  recommend: Recommend;
  /** Whether somebody lives with what is said of one picture, so that it stays by itself among others alike. */
  isWaived: (verdict: Verdict) => boolean;
}

/** One thing a rule has to say, of a picture or, without one, of the whole book. */
export interface Verdict {
  picture?: BookPicture;
  message: string;
  data: Record<string, unknown>;
  /** Only worth knowing: stays a note whatever severity the rule is set to. */
  note?: true;
}

/** A JSON schema of one object; every property has a `default` and a `description`. */
export interface OptionSchema {
  type: 'object';
  additionalProperties: false;
  properties: Record<string, { default: unknown; description: string; [keyword: string]: unknown }>;
}

export interface Rule {
  /** Fixed: it stands in settings, waivers and reports. */
  id: string;
  /** One line for the list of rules. */
  description: string;
  /** Where the settings say nothing. */
  severity: Severity;
  /** What its findings are about. */
  scope: 'picture' | 'book' | 'both';
  /** What it says of a picture depends on the others: it is silent where some of the book were not looked at. */
  compares?: true;
  /** How far a picture must have been read before the rule can say anything. */
  needs: 'header' | 'pixels' | 'forecast';
  /**
   * The intents it judges. A picture in colour of which nobody said what it is meant to be is shown to those rules
   * only that judge `colour`: it is listed by the report, not judged.
   */
  intents: readonly Intent[];
  options: OptionSchema;
  /** Templates for `say`. */
  messages: Readonly<Record<string, string>>;
  /** Its page, Markdown. */
  page: string;
  check(book: BookView, options: Record<string, unknown>): Iterable<Verdict>;
}

/** A rule with its own options typed inside and forgotten outside; the options arrive checked, defaults filled in. */
export function defineRule<Options extends object = Record<never, never>>(
  rule: Omit<Rule, 'check'> & { check(book: BookView, options: Options): Iterable<Verdict> },
): Rule {
  return rule as Rule;
}

/** For a rule without options. */
export const noOptions: OptionSchema = { type: 'object', additionalProperties: false, properties: {} };

export const everyIntent: readonly Intent[] = ['grey', 'toned', 'colour', 'line'];
export const greyOrToned: readonly Intent[] = ['grey', 'toned'];
