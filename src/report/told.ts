import type { BookReport, Finding, PictureReport, Severity, WaivedFinding } from '../shared/finding';

/** A finding with the picture it is about; null: the book as a whole. */
export interface Told<Picture = PictureReport> {
  finding: Finding | WaivedFinding;
  picture: Picture | null;
}

/** For sorting: the worst first. */
export const rank: Record<Severity, number> = { error: 0, warning: 1, note: 2 };

/** Every finding of a report, worst first; of one severity first the book's, then by path and page. */
export function everyFinding<Picture extends Pick<PictureReport, 'findings'>>({
  pictures,
  findings,
}: {
  pictures: readonly Picture[];
  findings: readonly Finding[];
}): Told<Picture>[] {
  const all: Told<Picture>[] = [
    ...findings.map(finding => ({ finding, picture: null })),
    ...pictures.flatMap(picture => picture.findings.map(finding => ({ finding, picture }))),
  ];
  return all.sort((x, y) => rank[x.finding.severity] - rank[y.finding.severity]);
}

/** Every finding that is waived, in the same order. */
export function everyWaived({ pictures, waived = [] }: BookReport): (Told & { finding: WaivedFinding })[] {
  const ofPictures = pictures.map(picture => ({ ...picture, findings: picture.waived ?? [] }));
  return everyFinding({ pictures: ofPictures, findings: waived }) as (Told & { finding: WaivedFinding })[];
}
