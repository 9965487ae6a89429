import { count } from '../../rules/words';
import type { BookReport, Finding, PictureReport, Severity } from '../../shared/finding';
import type { Place } from '../place';
import { nameOf } from '../text/blocks';
import { element, Text } from './xml';

/**
 * The report of a check as JUnit XML, which services that show tests read: a case a picture, and one for the book as a
 * whole. What fails the check fails its case (`failing`: the severities that do); the rest stands in a case's output.
 */
export function bookJunit(report: BookReport, place: Place, failing: ReadonlySet<Severity>): string {
  const book: Case = { name: 'The book as a whole', file: place.settings, findings: report.findings };
  const pictures = report.pictures.map(picture => caseOf(picture, place));
  const suites = [suite('Book', [book], failing), suite('Pictures', pictures, failing)];
  const all = counts([book, ...pictures], failing);
  return `<?xml version="1.0" encoding="UTF-8"?>\n${element('testsuites', { name: 'Evengrey', ...all }, suites)}\n`;
}

interface Case {
  name: string;
  file: string | null;
  findings: readonly Finding[];
  /** Why nothing was judged. */
  skipped?: string;
}

function caseOf({ path, facts, findings, intentStated }: PictureReport, place: Place): Case {
  const unjudged = facts.encoding === 'colour' && !intentStated && !findings.length;
  return {
    name: nameOf(path, facts.page),
    file: place.folder + path,
    findings,
    ...(unjudged && { skipped: 'In colour, and nobody said what it is meant to be.' }),
  };
}

function counts(cases: readonly Case[], failing: ReadonlySet<Severity>) {
  const failed = cases.filter(({ findings }) => findings.some(({ severity }) => failing.has(severity)));
  return {
    tests: cases.length,
    failures: failed.length,
    errors: 0,
  };
}

const suite = (name: string, cases: readonly Case[], failing: ReadonlySet<Severity>) =>
  element(
    'testsuite',
    { name, ...counts(cases, failing), skipped: cases.filter(({ skipped }) => skipped).length },
    cases.map(of => testcase(of, name, failing)),
  );

function testcase(
  { name, file, findings, skipped }: Case,
  suiteName: string,
  failing: ReadonlySet<Severity>,
) {
  const failed = findings.filter(({ severity }) => failing.has(severity));
  const others = findings.filter(({ severity }) => !failing.has(severity));
  return element('testcase', { classname: `Evengrey.${suiteName}`, name, ...(file !== null && { file }) }, [
    ...(skipped ? [element('skipped', { message: skipped })] : []),
    ...(failed.length ? [failure(failed)] : []),
    ...(others.length ? [element('system-out', {}, new Text(others.map(line)))] : []),
  ]);
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
