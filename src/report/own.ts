// no-unit-test: test/cli/output.test.ts has it tell our results of every kind from what is not ours
import { isOwnPage } from '../layout';
import { isChart } from './chart/own';

/** Whether data that begins like this was written by Evengrey, by the keys with which its reports begin. */
export const isOwnData = (head: string): boolean =>
  /^\{\n"(?:schema":\d+,\n"(?:book|shard|base|dryRun)":|of":\{"path":)/.test(head);

const OURS = [
  isChart,
  isOwnPage,
  isOwnData,
  // a book that lies in a folder of its repository is called by it
  (head: string) => /^### Evengrey(?:, [^\n]+)?: /.test(head),
  (head: string) => /^\{\n {2}"\$schema": "[^"]*sarif[^"]*",.*"name": "Evengrey"/s.test(head),
  (head: string) => /^<\?xml [^>]*\?>\n<testsuites name="Evengrey"/.test(head),
];

/** Whether a file that begins like this was written by Evengrey: a page, a comment, a report, a chart. */
export const isOwnResult = (head: string): boolean => OURS.some(is => is(head));
