import type { BookPicture, BookReport, Finding, PictureReport, WaivedFinding } from '../../shared/finding';
import type { JudgedBook } from '../judge-book';
import { summarise } from '../summary';
import { keyOf, keysOf, type Waiver, waiverOf } from './key';

/** What was judged, with what is waived apart. */
export interface Split extends JudgedBook {
  /** About the book. */
  waived: WaivedFinding[];
  /** Waivers of none of these findings. */
  unused: Waiver[];
}

/**
 * Takes out of what was judged what is waived: it counts and fails no more, and is kept under `waived`.
 * @param others pictures that findings may name beside those that were judged
 */
export function splitWaived(
  judged: JudgedBook,
  waivers: readonly Waiver[],
  others: readonly BookPicture[] = [],
): Split {
  const known = byKey(waivers);
  const all = { pictures: [...judged.pictures, ...others] };
  const used = new Set<Waiver>();
  const sorted = (findings: readonly Finding[], picture: PictureReport | null) => {
    const standing: Finding[] = [];
    const waived: WaivedFinding[] = [];
    for (const finding of findings) {
      const own = known.size ? waiverOf(finding, picture, all) : null;
      const waiver = own && knownAs(own, known);
      if (waiver) {
        used.add(waiver);
        waived.push({ ...finding, reason: waiver.reason ?? '' });
      } else standing.push(finding);
    }
    return { findings: standing, waived };
  };
  return {
    pictures: judged.pictures.map(picture => ({ ...picture, ...sorted(picture.findings, picture) })),
    ...sorted(judged.findings, null),
    unused: waivers.filter(waiver => !used.has(waiver)),
  };
}

/** The same of a report, counted anew. */
export function applyWaivers(
  report: BookReport,
  waivers: readonly Waiver[],
): { report: BookReport; unused: Waiver[] } {
  const { unused, ...split } = splitWaived(report, waivers, report.scope?.others);
  const all = [...split.pictures.flatMap(({ waived = [] }) => waived), ...split.waived];
  const summary = { ...summarise(split.pictures, split.findings), waived: all.length };
  return { report: { ...report, ...split, summary }, unused };
}

/**
 * The waivers to be kept and those to be added, so that nothing of this report fails any more; sorted, the same for the
 * same findings. Notes are only for knowing and need none. `added`: findings that were not waived. `keep`: waivers that are of no finding of this report and
 * stay; reasons stay too, also of a finding of the same rule on the same picture that says something else now. `unknown`: paths with findings that cannot be waived, since they were not read.
 */
export function waiveAll(
  report: BookReport,
  waivers: readonly Waiver[],
  keep: readonly Waiver[],
): { waivers: Waiver[]; added: number; unknown: string[] } {
  const before = byKey(waivers);
  const judged = { pictures: [...report.pictures, ...(report.scope?.others ?? [])] };
  const reasons = new Map(waivers.map(waiver => [aboutOf(waiver), waiver.reason]));
  const now = new Map(keep.map(waiver => [keyOf(waiver), waiver]));
  const unknown: string[] = [];
  let added = 0;
  const add = (finding: Finding, picture: PictureReport | null, isWaived: boolean) => {
    if (finding.severity === 'note' && !isWaived) return;
    const waiver = waiverOf(finding, picture, judged);
    if (!waiver) {
      unknown.push(picture?.path ?? finding.rule);
      return;
    }
    const key = keyOf(waiver);
    const old = knownAs(waiver, before);
    // of pictures alike to the byte one waiver is of several findings
    if (!old) added++;
    if (now.has(key)) return;
    now.set(key, { ...waiver, reason: old?.reason ?? reasons.get(aboutOf(waiver)) ?? '' });
  };
  const all = (
    findings: readonly Finding[],
    waived: readonly Finding[] = [],
    picture: PictureReport | null,
  ) => {
    for (const finding of findings) add(finding, picture, false);
    for (const finding of waived) add(finding, picture, true);
  };
  all(report.findings, report.waived, null);
  for (const picture of report.pictures) all(picture.findings, picture.waived, picture);
  const order = (waiver: Waiver) =>
    JSON.stringify([waiver.picture ?? '', waiver.page ?? 1, waiver.rule, keyOf(waiver)]);
  return {
    waivers: [...now.values()].sort((x, y) => (order(x) < order(y) ? -1 : 1)),
    added,
    unknown: [...new Set(unknown)],
  };
}

/** What a waiver is about, whatever it says of it. */
const aboutOf = ({ rule, picture, page, value }: Waiver): string =>
  JSON.stringify([rule, picture ?? null, page ?? 1, value.target ?? null]);

const byKey = (waivers: readonly Waiver[]): Map<string, Waiver> =>
  new Map(waivers.flatMap(waiver => keysOf(waiver).map(key => [key, waiver] as const)));

const knownAs = (own: Waiver, known: ReadonlyMap<string, Waiver>): Waiver | undefined =>
  keysOf(own)
    .map(key => known.get(key))
    .find(waiver => waiver !== undefined);
