import type { BookEntry, CheckAnswer } from '../../shared/checker-protocol';
import type { Severity } from '../../shared/finding';
import type { Encoding } from '../../shared/picture';
import type { ShownFinding } from '../../shared/sheet';

/** What the pictures of a book are grouped by. */
export type By = 'finding' | 'encoding';

/** Pictures with the same finding, or stored in the same way. */
export interface Group {
  /** A rule, or an encoding, or `NOTHING_FOUND`. */
  id: string;
  /** The worst of a finding; null: the group is no finding. */
  severity: Severity | null;
  /** What its rule says of the book as a whole. */
  told: ShownFinding[];
  pictures: Leaf[];
}

/** A picture in a group. */
export interface Leaf {
  path: string;
  encoding: Encoding;
  /** What was found on it: by the group's rule, or all. */
  findings: ShownFinding[];
}

/** The group of pictures without a finding: who looks for a picture by its name is to find it. */
export const NOTHING_FOUND = '';

const RANK: Record<Severity, number> = { error: 0, warning: 1, note: 2 };

/**
 * The pictures of a book by finding, the worst and then the most frequent first, or by encoding, the most frequent first.
 * @param filter words that a picture's path, encoding and findings must have, all of them; pictures without a finding
 * come last then; '' shows all that have one
 */
export function groupsOf(answer: CheckAnswer, by: By, filter: string): Group[] {
  const words = plain(filter).split(/\s+/).filter(Boolean);
  const passes = (text: string) => words.every(word => plain(text).includes(word));
  const files = filesOf(answer.entries).filter(({ path, encoding, rules }) =>
    passes([path, encoding, ...rules].join(' ')),
  );
  const findings = new Map(answer.pictures.map(picture => [picture.path, picture.findings]));
  if (by === 'encoding') return sorted(byEncoding(files, findings));
  const found = byFinding(answer.book, files, findings);
  const without = words.length ? files.filter(({ rules }) => !rules.length) : [];
  return [
    ...sorted(found.filter(({ pictures, id }) => pictures.length > 0 || passes(id))),
    ...(without.length ? [nothingFound(without)] : []),
  ];
}

/** As it is searched: one file system writes an umlaut in one character, the next in two. */
const plain = (text: string) => text.normalize('NFC').toLowerCase();

const nothingFound = (files: readonly File[]): Group => ({
  ...{ id: NOTHING_FOUND, severity: null, told: [] },
  pictures: files.map(({ path, encoding }) => ({ path, encoding, findings: [] })),
});

function sorted(groups: readonly Group[]): Group[] {
  const rank = ({ severity }: Group) => (severity ? RANK[severity] : 0);
  return groups.toSorted(
    (x, y) => rank(x) - rank(y) || y.pictures.length - x.pictures.length || (x.id < y.id ? -1 : 1),
  );
}

interface File {
  path: string;
  encoding: Encoding;
  rules: readonly string[];
}

/** The pages of a file are one picture here. */
function filesOf(entries: readonly BookEntry[]): File[] {
  const files = new Map<string, File>();
  for (const { path, encoding, rules } of entries) {
    const before = files.get(path);
    files.set(path, before ? { ...before, rules: [...before.rules, ...rules] } : { path, encoding, rules });
  }
  return [...files.values()];
}

type Findings = ReadonlyMap<string, readonly ShownFinding[]>;

function byFinding(book: readonly ShownFinding[], files: readonly File[], findings: Findings): Group[] {
  const groups = new Map<string, Group>();
  const groupOf = (id: string) => {
    const group = groups.get(id) ?? { id, severity: null, told: [], pictures: [] };
    groups.set(id, group);
    return group;
  };
  const worsen = (group: Group, { severity }: ShownFinding) => {
    if (!group.severity || RANK[severity] < RANK[group.severity]) group.severity = severity;
  };
  for (const finding of book) {
    const group = groupOf(finding.rule);
    group.told.push(finding);
    worsen(group, finding);
  }
  for (const { path, encoding, rules } of files)
    for (const rule of new Set(rules)) {
      const own = (findings.get(path) ?? []).filter(finding => finding.rule === rule);
      const group = groupOf(rule);
      for (const finding of own) worsen(group, finding);
      // of what the book's finding asks of it the picture itself says nothing
      group.pictures.push({ path, encoding, findings: own.length ? own : group.told });
    }
  return [...groups.values()];
}

function byEncoding(files: readonly File[], findings: Findings): Group[] {
  const groups = new Map<string, Group>();
  for (const { path, encoding } of files) {
    const group = groups.get(encoding) ?? { id: encoding, severity: null, told: [], pictures: [] };
    group.pictures.push({ path, encoding, findings: [...(findings.get(path) ?? [])] });
    groups.set(encoding, group);
  }
  return [...groups.values()];
}
