// no-unit-test: part of the tests
import assert from 'node:assert/strict';
import { evengrey } from '../cli/support/run';

interface Told {
  rule: string;
  severity: string;
  message: string;
}

/** What these tests read of a report. */
export interface Report {
  pictures: {
    path: string;
    encoding: string;
    bits: number;
    channels: number;
    chroma: {
      max: number;
      share: number;
      places: { x: number; y: number; width: number; height: number; max: number }[];
    };
    findings: Told[];
  }[];
  findings: Told[];
}

/** Checks a folder with the built command line, which must end with this code. */
export async function check(folder: string, code = 0): Promise<Report> {
  const ran = await evengrey(['check', folder, '--format', 'json']);
  assert.equal(ran.code, code, ran.stderr);
  return JSON.parse(ran.stdout);
}

/** Every finding in one line: where, which, how grave. */
export const findings = ({ pictures, findings }: Report): string[] => [
  ...findings.map(told => `book: ${told.rule} ${told.severity}`),
  ...pictures.flatMap(({ path, findings }) => findings.map(told => `${path}: ${told.rule} ${told.severity}`)),
];
