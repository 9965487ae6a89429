// no-unit-test: test/report/json validates reports against what is put together of it
import { DECIMALS } from './number';

export type Schema = Record<string, unknown>;

/** Everything stands in a report whenever it is one; what is missing is null. More keys may come. */
export const object = (properties: Record<string, Schema>, description?: string): Schema => ({
  type: 'object',
  ...(description && { description }),
  properties,
  required: Object.keys(properties),
});
export const list = (items: Schema, description?: string): Schema => ({
  type: 'array',
  ...(description && { description }),
  items,
});
export const orNull = (schema: Schema, description?: string): Schema => ({
  ...(description && { description }),
  anyOf: [schema, { type: 'null' }],
});
export const number = (description: string, rest: Schema = {}): Schema => ({
  type: 'number',
  description,
  ...rest,
});
export const whole = (description: string, minimum = 0): Schema => ({
  type: 'integer',
  minimum,
  description,
});
export const share = (description: string): Schema => number(description, { minimum: 0, maximum: 1 });
export const text = (description?: string): Schema => ({
  type: 'string',
  ...(description && { description }),
});
export const flag = (description: string): Schema => ({ type: 'boolean', description });
export const words = (description: string, values: readonly (string | number | null)[]): Schema => ({
  ...(description && { description }),
  enum: values,
});

export const ENCODINGS = [
  'single-channel',
  'rgb-neutral',
  'rgb-residual',
  'rgb-toned',
  'black-only',
  'four-channel',
  'three-ink',
  'bilevel',
  'lab-neutral',
  'colour',
  'unreadable',
];
export const FORMATS = 'jpeg png tiff webp avif gif psd bmp heic jp2 svg pdf lfs-pointer unknown'.split(' ');
export const head = (title: string): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title,
  $comment: `Numbers are rounded to ${DECIMALS} decimals. Shares and probabilities run from 0 to 1. Keys may be added; none is renamed or dropped without a new number in "schema".`,
});
