import { judge } from '../../../src/rules';
import type { RuleSettings } from '../../../src/rules/settings';
import type { BookPicture, Finding } from '../../../src/shared/finding';

/** What the book's findings look like, without their words. */
export interface Judged {
  /** Findings of a rule on each picture, same order. */
  pictures: Finding[][];
  book: Finding[];
  /** Paths of the pictures that it names. */
  named: string[];
}

/** Findings of one rule, or of all, on a book. */
export function judged(
  pictures: BookPicture[],
  rule?: string,
  ruleSettings: RuleSettings = {},
  spreads: string[][] = [],
): Judged {
  const targets = [...new Map(pictures.flatMap(p => p.targets).map(t => [t.name, t])).values()];
  const { pictures: lists, book } = judge({ pictures, targets, ruleSettings, spreads });
  const ofRule = (findings: Finding[]) => findings.filter(finding => !rule || finding.rule === rule);
  const found = lists.map(ofRule);
  return {
    pictures: found,
    book: ofRule(book),
    named: pictures.filter((_, i) => found[i].length > 0).map(({ path }) => path),
  };
}
