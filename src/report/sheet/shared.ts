import type { Finding, PictureReport } from '../../shared/finding';

/** Whether a finding about the book is one about this picture too: by the target, or the pictures, that it names. */
export function concerns({ data }: Finding, { path, targets }: PictureReport): boolean {
  if (typeof data.target === 'string' && !targets.some(({ name }) => name === data.target)) return false;
  const named = namedPictures(data);
  return named.length === 0 || named.includes(path);
}

/** Whether a finding about the book asks for this very picture to be changed: it is named under `convert` or `pictures`. */
export function asksOf(finding: Finding, picture: PictureReport): boolean {
  const { convert, pictures } = finding.data;
  const changed = Array.isArray(convert) ? convert : Array.isArray(pictures) ? pictures : [];
  return concerns(finding, picture) && changed.includes(picture.path);
}

/** Paths under `pictures`, of the finding or of its groups; a number under that name is a count. */
function namedPictures(data: Record<string, unknown>): string[] {
  const groups = Array.isArray(data.groups) ? data.groups : [];
  return [data, ...groups].flatMap(({ pictures }) => (Array.isArray(pictures) ? pictures : []));
}
