import type {
  ComparedRevision,
  Comparison,
  FindingChanges,
  Match,
  PageChange,
  PictureChange,
} from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import { targetJson } from '../json';
import { document, SCHEMA } from '../json/document';
import { findingJson } from '../json/finding';
import { round } from '../json/number';
import { pictureJson } from '../json/picture';
import { differencesOf } from './differences';

/** A comparison as JSON text, by `compare-report.schema.json`: the same to the byte for the same revisions. */
export function comparisonJson(comparison: Comparison): string {
  const { base, head, mergeBase, scope, unread, beyond, changes, others, settings, rearranged, book } =
    comparison;
  const { advice, waived, notices, summary } = comparison;
  return document({
    schema: SCHEMA,
    base: revisionJson(base),
    head: revisionJson(head),
    mergeBase,
    scope,
    unread,
    beyond,
    changes: changes.map(({ kind, path, from, swapped, modes, bytes, neighbours, faced, still, pages }) => ({
      ...{ kind, path, from, swapped, modes, bytes, neighbours, faced, still },
      pages: pages.map(page => pageJson(page, bytes, base, head)),
    })),
    others: others.map(({ path, page, findings }) => ({
      path,
      page,
      findings: { new: findings.new.map(findingJson), ended: findings.ended.map(findingJson) },
    })),
    advice: advice.map(({ target, before, after, pictures }) => ({ target, before, after, pictures })),
    settings: {
      changes: settings.changes.map(({ words }) => words),
      off: settings.off ?? [],
      weaker: settings.weaker ?? [],
      stricter: settings.stricter ?? [],
      forecasts: settings.forecasts.map(({ target, pages, before, after }) => ({
        ...{ target, pages, before: round(before), after: round(after) },
      })),
    },
    rearranged,
    waived: waived.map(({ path, page, finding }) => ({ path, page, finding: findingJson(finding) })),
    findings: changesJson(book),
    notices,
    summary,
  });
}

const revisionJson = ({ asked, commit, folderThen, targets, pictures }: ComparedRevision) => ({
  asked,
  commit,
  folderThen: folderThen ?? null,
  targets: targets.map(targetJson),
  pictures,
});

const pageJson = (
  { page, before, after, samePixels, findings, waived, matches }: PageChange,
  bytes: PictureChange['bytes'],
  base: ComparedRevision,
  head: ComparedRevision,
) => ({
  page,
  before: before && pictureJson(before, base.findings),
  after: after && pictureJson(after, head.findings),
  samePixels,
  differences: differencesOf({ before, after, samePixels }, bytes),
  findings: changesJson(findings),
  waived: waived.map(findingJson),
  matches: matches.map(matchJson),
});

const matchJson = ({ target, verdict, rules, waived, stored, distance, probability }: Match) => ({
  ...{ target, verdict, rules, waived, stored: stored ?? null },
  distance: distance === null ? null : round(distance),
  probability: probability === null ? null : round(probability),
});

const changesJson = (findings: FindingChanges) => {
  const list = (some: readonly Finding[]) => some.map(findingJson);
  return { new: list(findings.new), ended: list(findings.ended), unchanged: list(findings.unchanged) };
};
