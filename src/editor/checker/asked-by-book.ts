import { adviceOn } from '../../report/sheet/advice';
import { changedBy } from '../../report/sheet/shared';
import type { Finding, PictureReport } from '../../shared/finding';
import type { PlacedFinding } from '../../shared/layout-places';

/** Pictures that a finding about the book asks to be converted, each path once, in the order of the book. */
export function convertedBy(finding: Finding, pictures: readonly PictureReport[]): string[] {
  const changed = changedBy(finding);
  const asked = pictures.filter(picture => changed.has(picture.path) && advised(picture, finding));
  return [...new Set(asked.map(({ path }) => path))];
}

/**
 * What findings about the book ask of its pictures, by path: told once in its settings, and for knowing on the lines that
 * place the pictures.
 * @param fixOf what a picture should be stored as, and the format that it has then where that is another
 */
export function askedByBook(
  findings: readonly Finding[],
  pictures: readonly PictureReport[],
  fixOf: (picture: PictureReport) => Pick<PlacedFinding, 'fix' | 'fixAs'>,
): Map<string, PlacedFinding[]> {
  const byPath = new Map<string, PlacedFinding[]>();
  const pages = new Map<string, PictureReport[]>();
  for (const picture of pictures) pages.set(picture.path, [...(pages.get(picture.path) ?? []), picture]);
  for (const finding of findings)
    for (const path of convertedBy(finding, pictures)) {
      const [picture, ...others] = pages.get(path)!;
      const { rule } = finding;
      const message = adviceOn({ ...picture, findings: [] }, [finding]).reason;
      // of a file of several pages nothing is converted
      const fix = others.length ? { fix: null, fixAs: null } : fixOf(picture);
      byPath.set(path, [...(byPath.get(path) ?? []), { rule, severity: 'note', message, ...fix }]);
    }
  return byPath;
}

const advised = (picture: PictureReport, finding: Finding): boolean =>
  adviceOn({ ...picture, findings: [] }, [finding]).kind === 'convert';
