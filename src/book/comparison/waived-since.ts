import type { NewlyWaived } from '../../shared/comparison';
import type { Finding, PictureReport, WaivedFinding } from '../../shared/finding';
import type { Split } from '../waivers/apply';
import { keysOf, type Waiver, waiverOf } from '../waivers/key';

/**
 * Findings that are waived by waivers that came, in the order of what was judged; not those that were waived before already.
 * @param came waivers of the book after that it did not have before
 */
export function waivedSince(came: readonly Waiver[], judged: Split): NewlyWaived[] {
  const keys = new Set(came.flatMap(keysOf));
  const isNew = (finding: Finding, picture: PictureReport | null) => {
    const waiver = waiverOf(finding, picture, judged);
    return waiver !== null && keysOf(waiver).some(key => keys.has(key));
  };
  const told = (waived: readonly WaivedFinding[], picture: PictureReport | null): NewlyWaived[] =>
    waived
      .filter(finding => isNew(finding, picture))
      .map(finding => ({ path: picture?.path ?? null, page: picture?.facts.page ?? 1, finding }));
  return [
    ...told(judged.waived, null),
    ...judged.pictures.flatMap(picture => told(picture.waived ?? [], picture)),
  ];
}
