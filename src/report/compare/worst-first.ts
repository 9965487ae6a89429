import type { PictureChange } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import type { ChangeVerdict } from '../../shared/review';
import { rank } from '../told';
import { breaks, leavesBlank } from './blank';
import { verdictOn } from './verdict';

export interface Ranked {
  change: PictureChange;
  /** Its number among the changes, from 0. */
  at: number;
  /** Errors and warnings that are new, else those that stay; worst first. */
  against: Finding[];
}

/**
 * Changed pictures by what speaks against them: first what cannot be printed at all, then new errors, by how many, then new
 * warnings, what stays of either, what is waived, and at last what nothing speaks against, the better behind what is gone,
 * and behind all the pictures of which no pixel changed. Those that are equal stay in their order. `off`: rules that run no
 * more.
 */
export const worstFirst = (changes: readonly PictureChange[], off?: readonly string[]): Ranked[] =>
  changes
    .map((change, at) => {
      const fresh = loud(change, 'new');
      return {
        change,
        at,
        against: fresh.length ? fresh : loud(change, 'unchanged'),
        weight: weightOf(change, off),
      };
    })
    .sort((x, y) => firstApart(x.weight, y.weight) || x.at - y.at)
    .map(({ change, at, against }) => ({ change, at, against }));

const loud = ({ pages }: PictureChange, which: 'new' | 'unchanged'): Finding[] =>
  pages
    .flatMap(({ findings }) => findings[which])
    .filter(({ severity }) => severity !== 'note')
    .sort((x, y) => rank[x.severity] - rank[y.severity]);

const KINDS: ChangeVerdict['kind'][] = ['worse', 'mixed', 'gone', 'better', 'same'];

/** The first number that differs decides, and the larger one goes first. */
function weightOf(change: PictureChange, off?: readonly string[]): number[] {
  const many = (findings: readonly Finding[], severity: Finding['severity']) =>
    findings.filter(finding => finding.severity === severity).length;
  const waived = change.pages.flatMap(page => page.waived);
  return [
    Number(leavesBlank(change) || breaks(change)),
    ...[loud(change, 'new'), loud(change, 'unchanged'), waived].flatMap(findings => [
      many(findings, 'error'),
      many(findings, 'warning'),
    ]),
    -KINDS.indexOf(verdictOn(change, off).kind),
    Number(isToSee(change)),
  ];
}

/** Whether there may be something to see, other than the very same pixels under another name or otherwise described. */
const isToSee = ({ kind, pages }: PictureChange): boolean =>
  kind !== 'mode' && !(pages.length && pages.every(({ samePixels }) => samePixels));

function firstApart(x: readonly number[], y: readonly number[]): number {
  const at = x.findIndex((weight, i) => weight !== y[i]);
  return at < 0 ? 0 : y[at] - x[at];
}
