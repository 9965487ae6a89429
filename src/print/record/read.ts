import type { PrintRecord, RecordReading } from '../../shared/target';
import type { Process } from '../process';
import { processes } from '../processes';
import { greyEncodings } from '../restated';

/** What a record file is called inside: `"record": 1`, the version of this form. */
const VERSION = 1;

/**
 * Reads a record of a print house (JSON: `record`: 1, then the fields of `PrintRecord`).
 * @throws Error in plain words: which value is wrong and what it should be
 */
export function parsePrintRecord(text: string): PrintRecord {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    throw new Error(`the record is no JSON: ${(error as Error).message}`);
  }
  const top = object(raw, 'the record');
  if (top.record !== VERSION)
    throw new Error(`"record" should be ${VERSION}: this is another file, or one of a newer version`);
  const readings = list(top.readings, 'readings').map((reading, i) => readingOf(reading, `readings[${i}]`));
  const paper = top.paper === null || top.paper === undefined ? null : whiteOf(top.paper);
  if (readings.length === 0) throw new Error('"readings" is empty: nothing was read yet');
  const twice = readings.find((r, i) => readings.findIndex(other => other.encoding === r.encoding) < i);
  if (twice) throw new Error(`"readings" holds ${twice.encoding} twice`);
  for (const [i, reading] of readings.entries()) refuseImpossible(reading, paper, `readings[${i}]`);
  return {
    process: oneOf(
      top.process,
      'process',
      processes.map(({ id }) => id),
    ),
    paper,
    date: dateOf(top.date),
    readings,
  };
}

/** Why the record cannot serve the process, in plain words; null where it can. */
export function recordProblem(process: Process, record: PrintRecord): string | null {
  if (record.process === process.id) return null;
  const other = processes.find(({ id }) => id === record.process)!;
  return `the record is of ${other.name}, not of ${process.name}: name the process that was read, or leave the record out`;
}

function readingOf(value: unknown, at: string): RecordReading {
  const reading = object(value, at);
  const orders = number(reading.orders, `${at}.orders`, 1, 10_000);
  if (!Number.isInteger(orders)) throw new Error(`"${at}.orders" should be a whole number`);
  const greys = list(reading.greys, `${at}.greys`).map((grey, i) => greyOf(grey, `${at}.greys[${i}]`));
  if (greys.length === 0) throw new Error(`"${at}.greys" is empty: at least one grey must have been read`);
  return {
    encoding: oneOf(reading.encoding, `${at}.encoding`, greyEncodings),
    orders,
    greys,
    order: optional(reading.order, value => spread(value, `${at}.order`)),
    page: optional(reading.page, value => spread(value, `${at}.page`)),
    black: optional(reading.black, value => number(value, `${at}.black`, 0, 60)),
  };
}

/** No grey is darker than the black of its print, or lighter than the paper: a slip of the pen, or another print. */
function refuseImpossible({ greys, black }: RecordReading, paper: PrintRecord['paper'], at: string): void {
  for (const [i, { L }] of greys.entries()) {
    if (black !== null && L < black)
      throw new Error(`"${at}.black" is L* ${black}, and "${at}.greys[${i}]" is darker, L* ${L}: no grey is`);
    if (paper !== null && L > paper[0])
      throw new Error(`"${at}.greys[${i}]" is L* ${L}, lighter than the paper, L* ${paper[0]}: no grey is`);
  }
}

function greyOf(value: unknown, at: string) {
  const grey = object(value, at);
  return {
    L: number(grey.L, `${at}.L`, 0, 100),
    a: number(grey.a, `${at}.a`, -60, 60),
    b: number(grey.b, `${at}.b`, -60, 60),
  };
}

function spread(value: unknown, at: string) {
  const { a, b } = object(value, at);
  return { a: number(a, `${at}.a`, 0, 20), b: number(b, `${at}.b`, 0, 20) };
}

function whiteOf(value: unknown): [number, number, number] {
  const lab = list(value, 'paper');
  if (lab.length !== 3) throw new Error('"paper" should be three numbers: L*, a*, b*');
  return [
    number(lab[0], 'paper[0]', 40, 100),
    number(lab[1], 'paper[1]', -60, 60),
    number(lab[2], 'paper[2]', -60, 60),
  ];
}

function dateOf(value: unknown): string {
  if (typeof value !== 'string' || !/^\d{4}-\d{2}-\d{2}$/.test(value) || Number.isNaN(Date.parse(value)))
    throw new Error('"date" should be a day such as 2026-03-01');
  return value;
}

const optional = <T>(value: unknown, read: (value: unknown) => T): T | null =>
  value === null || value === undefined ? null : read(value);

function object(value: unknown, at: string): Record<string, unknown> {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new Error(`${at === 'the record' ? at : `"${at}"`} should be an object in braces`);
  return value as Record<string, unknown>;
}

function list(value: unknown, at: string): unknown[] {
  if (!Array.isArray(value)) throw new Error(`"${at}" should be a list in brackets`);
  return value;
}

function number(value: unknown, at: string, least: number, most: number): number {
  if (typeof value !== 'number' || !(value >= least && value <= most))
    throw new Error(`"${at}" should be a number from ${least} to ${most}`);
  return value;
}

function oneOf<T extends string>(value: unknown, at: string, known: readonly T[]): T {
  if (!known.includes(value as T)) throw new Error(`"${at}" should be one of ${known.join(', ')}`);
  return value as T;
}
