// no-unit-test: test/report/compare/text.test.ts, markdown.test.ts and github.test.ts read what comes of it

import { list } from '../../rules/words';
import type { Comparison } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import type { Mended } from '../blank-at';
import { type Block, blocksOf, nameOf, type Told } from '../text/blocks';
import { aSeverity, isRegraded, OFF, regraded } from './regraded';
import { whoseChanged } from './settings';

interface News extends Told {
  pictures: readonly (Told['pictures'][number] & Mended)[];
}

/**
 * What is new, or ended: on the pictures that changed, on those that are judged otherwise, and on the book, what is said of
 * several pictures at once being said once. A picture is called as it is now.
 */
export function newsOf({ base, head, changes, others, book }: Comparison, which: 'new' | 'ended'): News {
  const pictures = [
    ...changes.flatMap(({ path, pages }) =>
      pages.map(({ page, after, findings }) => ({
        ...{ path, facts: { page, unreadable: after?.facts.unreadable }, placedAt: after?.placedAt },
        findings: findings[which],
      })),
    ),
    ...others.map(({ path, page, findings }) => ({ path, facts: { page }, findings: findings[which] })),
  ];
  const all = pictures.flatMap(({ findings }) => findings);
  const together = new Set((which === 'new' ? head : base).findings);
  // what is new for some of the pictures that it names is told of these, in words of its own
  const first = new Set<Finding>();
  for (const finding of all) {
    if (first.has(finding)) together.add(finding);
    first.add(finding);
  }
  const said = new Set(all.filter(finding => together.has(finding)));
  return {
    pictures: pictures.map(picture => ({
      ...picture,
      findings: picture.findings.filter(finding => !said.has(finding)),
    })),
    findings: [...new Set([...said, ...book[which]])],
  };
}

/** The same by rule, as a check tells it. */
export const blocksNow = (comparison: Comparison, which: 'new' | 'ended'): Block[] =>
  blocksOf(newsOf(comparison, which));

/** The same in a line a rule: `warning mixed-encodings: a.tif, b.tif`. */
export const namesOf = (block: Block): string[] => [
  ...new Set(block.entries.flatMap(({ pictures }) => pictures)),
];

/** Why pictures that did not change are judged otherwise, as it ends the title of their list. */
export function whyOthers(comparison: Comparison): string {
  const whose = whoseChanged(comparison);
  const reasons = [
    ...(whose.length ? [`the ${list(whose)} changed`] : []),
    ...(comparison.changes.length ? ['what they are compared with changed'] : []),
  ];
  return `Judged otherwise, though unchanged themselves: ${reasons.join(', or ')}`;
}

/** `p1.jpg: new: error low-resolution; ended: warning mixed-encodings`, a line a picture. */
export const otherLines = ({ others, book, settings }: Comparison): string[] =>
  others.map(({ path, page, findings }) => {
    const same = regraded(findings, book.new);
    const off = findings.ended.filter(({ rule }) => settings.off?.includes(rule));
    const told = (which: 'new' | 'ended') => {
      const some = findings[which].filter(
        finding => !off.includes(finding) && !same.some(({ now, was }) => finding === now || finding === was),
      );
      return some.length
        ? [`${which}: ${some.map(({ rule, severity }) => `${severity} ${rule}`).join(', ')}`]
        : [];
    };
    const graded = [
      ...same.map(({ now, words }) => `${now.rule} ${words}`),
      ...off.map(was => `${was.rule} is off now, was ${aSeverity(was)}`),
    ];
    return `${nameOf(path, page)}: ${[...graded, ...told('new'), ...told('ended')].join('; ')}`;
  });

/** What became of what ended, where all of it is told with another severity now, or its rule is off: ` (an error now)`. */
export function goesOn(block: Block, comparison: Comparison): string {
  const names = namesOf(block);
  const now = blocksNow(comparison, 'new').find(
    ({ rule, severity, entries, book }) =>
      rule === block.rule &&
      severity !== block.severity &&
      names.every(name => entries.some(entry => entry.pictures.includes(name))) &&
      block.book.every(was => book.some(finding => isRegraded(finding, was))),
  );
  if (now) return ` (${aSeverity(now)} now)`;
  return comparison.settings.off?.includes(block.rule) ? OFF : '';
}
