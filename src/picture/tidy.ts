/** Digits that mean something: floats hold no more, and equal pictures give equal texts on every machine. */
const DIGITS = 7;
/** Below this a number is rounding. */
const NOTHING = 1e-9;

/** A copy of plain data with its fractions rounded to what they are good for; whole numbers stay. */
export function tidy<T>(value: T): T {
  if (typeof value === 'number') return tidyNumber(value) as T;
  if (Array.isArray(value)) return value.map(tidy) as T;
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, tidy(inner)])) as T;
}

function tidyNumber(value: number): number {
  if (Number.isInteger(value)) return value + 0;
  return Math.abs(value) < NOTHING ? 0 : Number(value.toPrecision(DIGITS));
}
