import type { Finding, PictureReport } from '../../shared/finding';

/** Whether a finding about the book is one about this picture too: by the target, or the pictures, that it names or counts. */
export function concerns(finding: Finding, picture: PictureReport): boolean {
  if (!isPrintedOn(finding, picture)) return false;
  const { named, counted } = picturesIn(finding.data);
  return (named.size === 0 && counted.size === 0) || named.has(picture.path) || counted.has(picture.path);
}

/** Whether it is one about this picture by name, not only by what is said of many alike. */
export const names = (finding: Finding, picture: PictureReport): boolean =>
  isPrintedOn(finding, picture) && picturesIn(finding.data).named.has(picture.path);

const isPrintedOn = ({ data }: Finding, { targets }: PictureReport): boolean =>
  typeof data.target !== 'string' || targets.some(({ name }) => name === data.target);

/** Whether a finding about the book asks for this very picture to be changed: it is named under `convert` or `pictures`. */
export const asksOf = (finding: Finding, picture: PictureReport): boolean =>
  changedBy(finding).has(picture.path) && concerns(finding, picture);

/** Paths of the pictures that a finding about the book asks to be changed, on some target. */
export const changedBy = ({ data }: Finding): ReadonlySet<string> => picturesIn(data).changed;

interface Pictures {
  /** Under `pictures`, of the finding or of its groups; a number under that name is a count. */
  named: ReadonlySet<string>;
  /** Under `counted`: what is said of the book was reckoned from them. */
  counted: ReadonlySet<string>;
  /** Those that are to be changed. */
  changed: ReadonlySet<string>;
}

/** In a large book a finding names thousands, and every picture asks for itself. */
const known = new WeakMap<Finding['data'], Pictures>();

function picturesIn(data: Finding['data']): Pictures {
  let pictures = known.get(data);
  if (!pictures) {
    const groups = Array.isArray(data.groups) ? data.groups : [];
    const listed = (of: unknown): string[] => (Array.isArray(of) ? of : []);
    pictures = {
      named: new Set([data, ...groups].flatMap(each => listed(each.pictures))),
      counted: new Set(listed(data.counted)),
      changed: new Set(listed(Array.isArray(data.convert) ? data.convert : data.pictures)),
    };
    known.set(data, pictures);
  }
  return pictures;
}
