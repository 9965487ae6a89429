import { InvalidArgumentError, Option } from 'commander';
import type { ShardNumber } from '../book/shards/shard';
import { lights } from '../print/lights';
import { papers } from '../print/papers';
import { processes } from '../print/processes';
import { wrap } from '../report/text/wrap';
import { known } from './known';

export interface ConditionOptions {
  process?: string;
  paper?: string;
  light?: string;
}

export const formatOption = (formats: readonly string[] = ['text', 'json']) =>
  new Option('--format <format>', 'how it is written')
    .choices(formats) // for the help
    .argParser(word => known('format', word, formats))
    .default('text');

export const outputOption = () =>
  new Option('--output <file>', 'write the result to a file instead; never over a picture');

/** The names that the options below take, for the end of a verb's help. They are checked when the verb is run. */
export function conditionHelp(): string {
  const line = (what: string, ids: readonly { id: string }[]) =>
    [`${what}:`, ...wrap(ids.map(({ id }) => id).join(', '), 74).map(text => `  ${text}`)].join('\n');
  return `\n${[line('Processes', processes), line('Papers', papers), line('Lights', lights)].join('\n')}`;
}

export const conditionOptions = (left: { process: string; paper: string; light: string }) => [
  new Option('--process <id>', `how it is printed; ${left.process}`),
  new Option('--paper <id>', `on which paper; ${left.paper}`),
  new Option('--light <id>', `the light it is seen under; ${left.light}`),
];

/** A whole number from `least` up. */
export const wholeFrom = (least: number) => (value: string) => {
  if (!/^\d+$/.test(value) || Number(value) < least)
    throw new InvalidArgumentError(`It must be a whole number from ${least} up.`);
  return Number(value);
};

/** `2/4`: the second of four parts. */
export function shardNumber(value: string): ShardNumber {
  const [, index, count] = /^(\d{1,6})\/(\d{1,6})$/.exec(value) ?? [];
  if (index === undefined || Number(index) < 1 || Number(index) > Number(count))
    throw new InvalidArgumentError('It must be a part and the number of parts, such as 2/4.');
  return { index: Number(index), count: Number(count) };
}

/** As people write numbers: no hexadecimal, no exponent. */
const DECIMAL = /^\s*(\d+\.?\d*|\.\d+)\s*$/;

/** `count` numbers between 0 and `most`, separated by commas. */
export const numbers = (count: number, most: number) => (value: string) => {
  const values = value.split(',').map(part => (DECIMAL.test(part) ? Number(part) : Number.NaN));
  if (values.length !== count || !values.every(v => v >= 0 && v <= most))
    throw new InvalidArgumentError(
      count === 1
        ? `It must be a number from 0 to ${most}.`
        : `It must be ${count} numbers from 0 to ${most} with commas between them.`,
    );
  return values;
};
