import type { Finding, Severity } from '../../shared/finding';
import type { JudgedBook } from '../judge-book';
import { gradeOf } from '../revisions/settings-changes';
import type { Settings } from '../settings/settings';
import { partnerCalledNow } from './pairs';

type Rules = Settings['rules'];

/** A book as it was, and of findings that count or are called otherwise now what they were. */
export interface Regraded<Book> {
  before: Book;
  was: ReadonlyMap<Finding, Finding>;
}

/**
 * What was judged before, with findings that count for what their rules do since, on targets as they are called since: so
 * that one of which only the severity or the target's name is another is neither new nor ended. A rule that is off, or was,
 * has said nothing on that side. @param called names of targets now, by those before
 * @param calledNow pictures before, as they are called now
 */
export function regraded<Book extends JudgedBook>(
  before: Book,
  after: JudgedBook,
  rules: { was: Rules; is: Rules },
  called: ReadonlyMap<string, string> = new Map(),
  calledNow: (path: string) => string = path => path,
): Regraded<Book> {
  const was = new Map<Finding, Finding>();
  const notes = new Set(
    allOf(after)
      .filter(({ severity }) => severity === 'note')
      .map(shapeOf),
  );
  const restated = (finding: Finding): Finding => {
    const severity = severityNow(finding, rules, notes);
    const target = called.get(`${finding.data.target}`);
    const paired = partnerCalledNow(finding.data, calledNow);
    if (severity === finding.severity && target === undefined && !paired) return finding;
    const data = { ...finding.data, ...paired, ...(target !== undefined && { target }) };
    const now = { ...finding, severity, data };
    was.set(now, finding);
    return now;
  };
  return {
    before: {
      ...before,
      pictures: before.pictures.map(picture => ({ ...picture, findings: picture.findings.map(restated) })),
      findings: before.findings.map(restated),
    },
    was,
  };
}

function severityNow(
  finding: Finding,
  rules: { was: Rules; is: Rules },
  notes: ReadonlySet<string>,
): Severity {
  const { rule, severity } = finding;
  const [was, is] = [gradeOf(rule, rules.was[rule]), gradeOf(rule, rules.is[rule])];
  // what a rule only notes is a note whatever it is set to
  const isNoted = severity === 'note' && notes.has(shapeOf(finding));
  return was !== severity || is === 'off' || isNoted ? severity : is;
}

/** A rule may say two things; what it tells along with them tells them apart. */
const shapeOf = ({ rule, data }: Finding): string => [rule, ...Object.keys(data).sort()].join(' ');

const allOf = ({ pictures, findings }: JudgedBook): Finding[] => [
  ...pictures.flatMap(picture => picture.findings),
  ...findings,
];
