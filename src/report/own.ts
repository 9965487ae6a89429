// no-unit-test: test/cli/output.test.ts has it tell our results of every kind from what is not ours
import { isChart } from './chart/own';

/** How the head of our pages says whose they are. */
export const GENERATOR = '<meta name="generator" content="Evengrey">';

/** Bytes that tell. */
export const HEAD = 512;

const OURS = [
  isChart,
  (head: string) => head.startsWith('<!DOCTYPE html>') && head.includes(GENERATOR),
  (head: string) => head.startsWith('### Evengrey: '),
  (head: string) => /^\{\s*"(?:schema|of|forecasts|advice|settings)":/.test(head),
  (head: string) => /^\{\s*"\$schema": "[^"]*sarif/.test(head),
];

/** Whether a file that begins like this was written by Evengrey: a page, a comment, a report, a chart. */
export const isOwnResult = (head: string): boolean => OURS.some(is => is(head));
