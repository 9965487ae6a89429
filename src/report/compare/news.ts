// no-unit-test: test/report/compare/text.test.ts, markdown.test.ts and github.test.ts read what comes of it

import { list } from '../../rules/words';
import type { Comparison } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import type { Mended } from '../blank-at';
import { type Block, blocksOf, nameOf, type Told } from '../text/blocks';
import { whoseChanged } from './settings';

interface News extends Told {
  pictures: readonly (Told['pictures'][number] & Mended)[];
}

/**
 * What is new, or ended: on the pictures that changed, on those that are judged otherwise, and on the book, what is said of
 * several pictures at once being said once. A picture is called as it is now.
 */
export function newsOf({ head, changes, others, book }: Comparison, which: 'new' | 'ended'): News {
  const pictures = [
    ...changes.flatMap(({ path, pages }) =>
      pages.map(({ page, after, findings }) => ({
        ...{ path, facts: { page, unreadable: after?.facts.unreadable }, placedAt: after?.placedAt },
        findings: findings[which],
      })),
    ),
    ...others.map(({ path, page, findings }) => ({ path, facts: { page }, findings: findings[which] })),
  ];
  // what ended is told of the pictures that it ended for: it may stand for others
  if (which === 'ended') return { pictures, findings: book.ended };
  const all = pictures.flatMap(({ findings }) => findings);
  const together = new Set(head.findings);
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
    findings: [...new Set([...said, ...book.new])],
  };
}

/** The same by rule, as a check tells it; pictures of which it is told are counted, whomever else a finding names. */
export function blocksNow(comparison: Comparison, which: 'new' | 'ended'): Block[] {
  const { changes, others } = comparison;
  const told = [
    ...changes.flatMap(({ path, pages }) => pages.map(page => ({ ...page, path }))),
    ...others,
  ].map(({ path, page, findings }) => ({ name: nameOf(path, page), findings: findings[which] }));
  return blocksOf(newsOf(comparison, which)).map(block => ({
    ...block,
    count: told.filter(({ findings }) =>
      findings.some(({ rule, severity }) => rule === block.rule && severity === block.severity),
    ).length,
  }));
}

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
    ...(comparison.rearranged.length ? ['pictures stand elsewhere'] : []),
  ];
  return `Judged otherwise, though unchanged themselves: ${reasons.join(', or ')}`;
}

/** It was said before, and its waiver is of other pictures or is gone. */
const WAIVED = ' (waived before)';

/** `p1.jpg: new: error low-resolution; ended: warning mixed-encodings`, a line a picture. */
export const otherLines = ({ others, settings }: Comparison): string[] =>
  others.map(({ path, page, findings, lapsed = [] }) => {
    const off = findings.ended.filter(({ rule }) => settings.off?.includes(rule));
    const told = (which: 'new' | 'ended') => {
      const some = findings[which].filter(finding => !off.includes(finding));
      return some.length
        ? [
            `${which}: ${some.map(({ rule, severity }) => `${severity} ${rule}${which === 'new' && lapsed.includes(rule) ? WAIVED : ''}`).join(', ')}`,
          ]
        : [];
    };
    const unsaid = off.map(({ rule, severity }) => `${rule} is off now, was ${aSeverity(severity)}`);
    return `${nameOf(path, page)}: ${[...unsaid, ...told('new'), ...told('ended')].join('; ')}`;
  });

const aSeverity = (severity: Finding['severity']): string =>
  `${severity === 'error' ? 'an' : 'a'} ${severity}`;

/** What follows the name of a rule whose finding ended, where that is only because it is off: ` (its rule is off now)`. */
export const whyEnded = (
  { rule }: Pick<Finding, 'rule'>,
  { settings }: Pick<Comparison, 'settings'>,
): string => (settings.off?.includes(rule) ? ' (its rule is off now)' : '');
