import type { BookPicture, Finding, PictureReport } from '../../shared/finding';
import type { Target } from '../../shared/target';
import { partnerOf } from '../partner';

/** A finding that the team has decided to live with, as the file has it. */
export interface Waiver {
  rule: string;
  picture?: string | null;
  /** The other picture, where it is of two: which of them has the finding hangs on the order of the book. */
  other?: string;
  page?: number;
  content: string[];
  value: Record<string, unknown>;
  /** What the target that `value` names was printed on, by which it is known where it is called otherwise since. */
  on?: Record<string, unknown>;
  says?: string;
  reason?: string;
}

/**
 * What is not the finding's own value: what it says of other pictures, figures that only explain it, which way one of two
 * differs from the other, and on which line a layout places it.
 */
const OF_OTHERS: ReadonlySet<string> = new Set([
  'all',
  'basis',
  'beside',
  'convert',
  'counted',
  'difference',
  'file',
  'groups',
  'line',
  'most',
  'pictures',
  'places',
  'same',
  'save',
  'usual',
]);

/** As many digits of a figure as a decision rests on: a newer model that moves the last ones asks nobody again. */
const DIGITS = 2;

/** What a finding says in figures, keys in order. */
export function figuresOf({ data }: Finding): Record<string, unknown> {
  return rounded(Object.fromEntries(Object.entries(data).filter(([key]) => !OF_OTHERS.has(key)))) as Record<
    string,
    unknown
  >;
}

function rounded(value: unknown): unknown {
  if (typeof value === 'number') return Number.isFinite(value) ? Number(value.toPrecision(DIGITS)) + 0 : null;
  if (Array.isArray(value)) return value.map(rounded);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).filter(([, inner]) => inner !== undefined);
  return Object.fromEntries(
    entries.sort(([x], [y]) => (x < y ? -1 : 1)).map(([key, inner]) => [key, rounded(inner)]),
  );
}

/** Where the pictures are that a finding names. */
interface Judged {
  pictures: readonly BookPicture[];
}

/**
 * Contents that a finding is about: the picture's own, of two those of both, or those of the pictures that a finding about the
 * book names. Null where one of them was not read, though its bytes be known: nobody can live with what nobody has seen.
 */
export function contentOf(
  finding: Finding,
  picture: BookPicture | null,
  { pictures }: Judged,
): string[] | null {
  const other = picture && partnerOf(finding);
  const named = new Set(picture ? (other === null ? [] : [other]) : namedIn(finding.data));
  const about = [...(picture ? [picture] : []), ...pictures.filter(({ path }) => named.has(path))];
  return about.every(wasRead) ? [...new Set(about.map(({ facts }) => facts.sha256))].sort() : null;
}

const wasRead = ({ facts }: Pick<PictureReport, 'facts'>): boolean =>
  facts.sha256 !== '' && !facts.unreadable;

const LISTS: ReadonlySet<string> = new Set(['pictures', 'convert', 'counted']);

/** Paths anywhere under these keys. */
function namedIn(data: unknown): string[] {
  if (Array.isArray(data)) return data.flatMap(namedIn);
  if (data === null || typeof data !== 'object') return [];
  return Object.entries(data).flatMap(([key, value]) =>
    LISTS.has(key) && Array.isArray(value) ? value.filter(path => typeof path === 'string') : namedIn(value),
  );
}

/** By what a finding is known again: content, page, rule and value. Where the picture lies does not count. */
export const keyOf = ({
  rule,
  page,
  content,
  value,
}: Pick<Waiver, 'rule' | 'page' | 'content' | 'value'>): string =>
  JSON.stringify([rule, page ?? 1, [...content].sort(), rounded(value)]);

/** All by which it is known: also on a target that is called otherwise, and prints on the same in the same way. */
export const keysOf = (waiver: Pick<Waiver, 'rule' | 'page' | 'content' | 'value' | 'on'>): string[] => [
  keyOf(waiver),
  ...(waiver.on ? [keyOf({ ...waiver, value: { ...waiver.value, target: waiver.on } })] : []),
];

/** What a finding's target is but for its name; undefined where it is of none. */
function printedOn(
  { data }: Finding,
  pictures: readonly Pick<BookPicture, 'targets'>[],
): Waiver['on'] | undefined {
  if (typeof data.target !== 'string') return undefined;
  for (const { targets } of pictures) {
    const target = targets.find(({ name }) => name === data.target);
    if (target) return conditionsOf(target);
  }
  return undefined;
}

function conditionsOf(target: Target): Record<string, unknown> {
  const { process, paper, light, route, encodings, inkLimit, profile, record } = target;
  const stated = Object.entries({ process, paper, light, route, encodings, inkLimit, profile, record });
  return Object.fromEntries(stated.filter(([, value]) => value !== null));
}

/** The waiver that a finding would have; null where it can have none. */
export function waiverOf(finding: Finding, picture: BookPicture | null, judged: Judged): Waiver | null {
  const content = contentOf(finding, picture, judged);
  if (!content) return null;
  const other = picture && partnerOf(finding);
  const on = printedOn(finding, picture ? [picture] : judged.pictures);
  return {
    rule: finding.rule,
    picture: picture?.path ?? null,
    ...(other !== null && { other }),
    ...(picture && picture.facts.page > 1 ? { page: picture.facts.page } : {}),
    content,
    value: figuresOf(finding),
    ...(on && { on }),
    says: finding.message,
    reason: '',
  };
}

/** Says of a finding on one of these pictures whether one of the waivers is of it. */
export function isWaivedBy(
  waivers: readonly Waiver[],
  judged: Judged,
): (finding: Finding, picture: BookPicture) => boolean {
  const keys = new Set(waivers.flatMap(keysOf));
  return (finding, picture) => {
    const own = keys.size > 0 && waiverOf(finding, picture, judged);
    return own ? keysOf(own).some(key => keys.has(key)) : false;
  };
}
