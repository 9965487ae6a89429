import { count } from '../../rules/words';
import type { BookReport, Finding, PictureReport, Severity, WaivedFinding } from '../../shared/finding';
import { askedBy } from '../asked';
import { blankAt } from '../blank-at';
import { isPassedOver } from '../passed-over';
import type { Place } from '../place';
import { type PlacedSlip, slipsApart } from '../slips';
import { beyondWords } from '../text/begin';
import { nameOf } from '../text/blocks';
import type { Trouble } from '../trouble';
import { element, Text } from './xml';

/**
 * The report of a check as JUnit XML, which services that show tests read: a case a picture, one for the book as a whole,
 * and one for each line of the settings that says something in vain. What fails the check fails its case (`failing`: the severities that do), and a picture that the book is failed
 * for fails too; the rest stands in a case's output. `troubles` are errors of the book's case.
 */
export function bookJunit(
  report: BookReport,
  place: Place,
  failing: ReadonlySet<Severity>,
  troubles: readonly Trouble[] = [],
): string {
  const { findings, waived = [] } = report;
  const book: Case = {
    ...{ name: BOOK, file: place.settings, findings, waived, troubles },
    skipped: findings.length || troubles.length ? undefined : notCompared(report),
  };
  const ofBook = [book, ...slipsApart(report, place).slips.map(slipCase)];
  const pictures = report.pictures.map(picture => caseOf(picture, findings, place));
  const suites = [suite('Book', ofBook, place, failing), suite('Pictures', pictures, place, failing)];
  const all = counts([...ofBook, ...pictures], failing);
  return `<?xml version="1.0" encoding="UTF-8"?>\n${element('testsuites', { name: 'Evengrey', ...all }, suites)}\n`;
}

const BOOK = 'The book as a whole';

/** What was not looked at has passed nothing. */
function notCompared({ scope }: BookReport): string | undefined {
  if (!scope?.unread) return beyondWords(scope).trim() || undefined;
  const [others, were] = [count(scope.unread, 'other picture'), scope.unread === 1 ? 'was' : 'were'];
  return `${others} of the book ${were} not looked at, so nothing is said that compares pictures. Check the whole book, or add --whole.${beyondWords(scope)}`;
}

interface Case {
  name: string;
  file: string | null;
  /** From 1; undefined: all of the file. */
  line?: number;
  findings: readonly Finding[];
  waived: readonly WaivedFinding[];
  troubles?: readonly Trouble[];
  /** Why nothing was judged. */
  skipped?: string;
}

function caseOf(picture: PictureReport, ofBook: readonly Finding[], place: Place): Case {
  const { path, facts, intentStated, waived = [] } = picture;
  const shared = ofBook.filter(finding => askedBy(finding, [picture]).length).map(inShort);
  const findings = [...picture.findings, ...shared];
  const isInColour = facts.encoding === 'colour' && !intentStated && !findings.length;
  return {
    name: nameOf(path, facts.page),
    file: place.folder + (blankAt(picture)?.file ?? path),
    line: blankAt(picture)?.line,
    findings,
    waived,
    ...(isInColour && { skipped: 'In colour, and nobody said what it is meant to be.' }),
    ...(isPassedOver(picture) && { skipped: `It was not judged. ${facts.unreadable?.text}` }),
  };
}

/** A name in the settings that names nothing counts as a warning does. */
const slipCase = ({ slip, at }: PlacedSlip): Case => ({
  name: `${slip.file}:${slip.line}:${slip.column}`,
  file: at?.file ?? null,
  line: at?.line,
  findings: [{ rule: 'settings', severity: 'warning', message: slip.message, data: {} }],
  waived: [],
});

/** What the book's case says in full is not said again for each of a thousand pictures. */
const inShort = (finding: Finding): Finding => ({
  ...finding,
  message: `This picture is one of those that "${BOOK}" asks to be changed.`,
});

function counts(cases: readonly Case[], failing: ReadonlySet<Severity>) {
  const failed = cases.filter(({ findings }) => findings.some(({ severity }) => failing.has(severity)));
  return {
    tests: cases.length,
    failures: failed.length,
    errors: cases.filter(({ troubles }) => troubles?.length).length,
  };
}

/** Called after the book's folder, as several books of a repository are several sets of tests. */
function suite(name: string, cases: readonly Case[], { folder }: Place, failing: ReadonlySet<Severity>) {
  const book = folder.replace(/\/$/, '');
  const classname = ['Evengrey', ...(book ? book.split('/') : []), name].join('.');
  const skipped = cases.filter(of => of.skipped).length;
  return element(
    'testsuite',
    { name: book ? `${book}: ${name}` : name, ...counts(cases, failing), skipped },
    cases.map(of => testcase(of, classname, failing)),
  );
}

function testcase(
  { name, file, line: at, findings, waived, troubles = [], skipped }: Case,
  classname: string,
  failing: ReadonlySet<Severity>,
) {
  const failed = findings.filter(({ severity }) => failing.has(severity));
  const others = [
    ...findings.filter(({ severity }) => !failing.has(severity)).map(line),
    ...waived.map(finding => `waived${finding.reason && ` (${finding.reason})`}: ${line(finding)}`),
  ];
  const where = { ...(file !== null && { file }), ...(at !== undefined && { line: at }) };
  return element('testcase', { classname, name, ...where }, [
    ...(skipped ? [element('skipped', { message: skipped })] : []),
    ...(troubles.length ? [error(troubles)] : []),
    ...(failed.length ? [failure(failed)] : []),
    ...(others.length ? [element('system-out', {}, new Text(others))] : []),
  ]);
}

function error(troubles: readonly Trouble[]) {
  const lines = troubles.map(
    ({ message, at }) => `${at ? `${at.file}:${at.line}:${at.column}: ` : ''}${message}`,
  );
  return element('error', { message: lines[0], type: 'not checked' }, new Text(lines));
}

/** One a case: many readers show the first alone. */
function failure(findings: readonly Finding[]) {
  const [{ rule, message, severity }] = findings;
  const head =
    findings.length === 1
      ? `${rule}: ${message}`
      : `${count(findings.length, 'finding')}: ${[...new Set(findings.map(f => f.rule))].join(', ')}`;
  return element('failure', { message: head, type: severity }, new Text(findings.map(line)));
}

const line = ({ severity, rule, message }: Finding) => `${severity} ${rule}: ${message}`;
