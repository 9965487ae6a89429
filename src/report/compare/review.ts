import { treeOf } from '../../book/git/snapshot';
import type { Comparison, PageChange, PictureChange } from '../../shared/comparison';
import type { Finding, PictureReport } from '../../shared/finding';
import type { ForecastChange } from '../../shared/remedies';
import type { ComparedFact, Review, ReviewedPicture, ReviewedSide } from '../../shared/review';
import type { ShownFinding } from '../../shared/sheet';
import { changesOf, type Foreseen } from '../sheet/changes';
import { encodings } from '../sheet/encoding';
import { factLines } from '../sheet/facts';
import { nameOf } from '../text/blocks';
import { arrangedLines } from './arranged';
import { differencesOf } from './differences';
import { headline } from './headline';
import { whyEnded } from './news';
import { setVerdict } from './set';
import { settingsLines } from './settings';
import { verdictOn } from './verdict';
import { WAIVED, waivedLines } from './waived';
import { happened, matched, revisions, stored, tints } from './words';

/** A comparison as the editor lists it. */
export function reviewOf(comparison: Comparison): Review {
  const { base, changes, others, settings, book, notices } = comparison;
  return {
    headline: headline(comparison),
    matching: setVerdict(comparison),
    compared: revisions(comparison),
    pictures: changes.map(change => ({
      path: change.path,
      kind: change.kind,
      happened: happened(change),
      verdict: verdictOn(change, settings.off),
      new: countOf(change, 'new'),
      ended: countOf(change, 'ended'),
    })),
    book: { new: book.new.map(shown), ended: book.ended.map(shown) },
    others: others.map(({ path, page, findings }) => {
      const told = [
        ...findings.new.map(({ rule, message }) => `new ${rule}: ${message}`),
        ...findings.ended.map(was => `ended ${was.rule}${whyEnded(was, comparison)}`),
      ];
      return `${nameOf(path, page)}: ${told.join(' ')}`;
    }),
    notices: [
      ...settingsLines(comparison),
      ...waivedLines(comparison).map(line => `${WAIVED}: ${line}`),
      ...arrangedLines(comparison),
      ...notices,
    ],
    commit: treeOf(base),
  };
}

const countOf = ({ pages }: PictureChange, which: 'new' | 'ended'): number =>
  pages.reduce((sum, { findings }) => sum + findings[which].length, 0);

const shown = ({ rule, severity, message }: Finding): ShownFinding => ({ rule, severity, message });

/**
 * One picture of a comparison, by its name now or before, and a page of it: the first that changed where there is none of
 * that number. Null where it did not change.
 */
export function reviewedPicture(
  { changes, settings }: Pick<Comparison, 'changes' | 'settings'>,
  path: string,
  page: number | null,
): ReviewedPicture | null {
  const change = changes.find(each => each.path === path) ?? changes.find(({ from }) => from === path);
  if (!change) return null;
  const one = change.pages.find(each => each.page === page) ?? change.pages[0];
  return {
    path: change.path,
    page: one?.page ?? 1,
    pages: change.pages.map(each => each.page),
    happened: happened(change),
    verdict: verdictOn(change, settings.off),
    ...(one ? pageOf(change, one) : NOT_READ),
    neighbours: neighboursOf(change),
  };
}

/** Nothing of a picture is read where only its file mode changed. */
const NOT_READ = {
  ...{ before: null, after: null, says: [], facts: [], forecasts: [] },
  findings: { new: [], ended: [], unchanged: [] },
};

function pageOf({ path, from, bytes }: PictureChange, page: PageChange) {
  const { before, after, findings } = page;
  const several = ((after ?? before)?.targets.length ?? 0) > 1;
  const line = ({ words, target }: { words: string; target: string | null }) =>
    several && target !== null ? `${words} (${target})` : words;
  return {
    before: before && sideOf(before, from ?? path),
    after: after && sideOf(after, path),
    says: [
      ...differencesOf(page, bytes).map(({ words }) => words),
      stored(page),
      ...tints(page).map(line),
      ...matched(page).map(line),
    ].filter(Boolean),
    facts: factsOf(before, after),
    forecasts: forecastsOf(before, after),
    findings: {
      new: findings.new.map(shown),
      ended: findings.ended.map(shown),
      unchanged: findings.unchanged.map(shown),
    },
  };
}

const sideOf = ({ facts: { encoding } }: PictureReport, path: string): ReviewedSide => ({ path, encoding });

/** The encoding, then what was read from either file, line by line. */
function factsOf(before: PictureReport | null, after: PictureReport | null): ComparedFact[] {
  const [was, is] = [before, after].map(picture => {
    const lines = new Map<string, string>();
    if (!picture) return lines;
    const { encoding } = picture.facts;
    lines.set('Encoding', `${encodings[encoding].name} (${encoding})`);
    for (const [label, value] of factLines(picture))
      lines.set(label, lines.has(label) ? `${lines.get(label)} ${value}` : value);
    return lines;
  });
  return [...new Set([...was.keys(), ...is.keys()])].map(label => ({
    label,
    before: was.get(label) ?? '',
    after: is.get(label) ?? '',
  }));
}

/** Of a picture that is there on one side alone the other column says so. */
function forecastsOf(before: PictureReport | null, after: PictureReport | null): ForecastChange[] {
  if (before && after) return changesOf(before, after);
  const only = before ?? after;
  if (!only) return [];
  const nothing: Foreseen = { facts: only.facts, targets: [], forecasts: [] };
  return changesOf(nothing, only).map(change => ({
    ...change,
    rows: change.rows.map(({ label, after: figure }) =>
      before
        ? { label, before: figure, after: 'not in the book any more' }
        : { label, before: 'not in the book', after: figure },
    ),
  }));
}

function neighboursOf({
  kind,
  path,
  neighbours: { before, after, beside },
}: PictureChange): ReviewedPicture['neighbours'] {
  if (kind === 'deleted' || kind === 'mode') return [];
  const order = [before, path, after].filter(name => name !== null);
  const all = [...order, ...beside.filter(name => !order.includes(name))];
  return all.length > 1 ? all.map(name => ({ path: name, beside: beside.includes(name) })) : [];
}
