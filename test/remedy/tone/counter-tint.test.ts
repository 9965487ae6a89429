import assert from 'node:assert/strict';
import { defaultTarget } from '../../../src/print';
import { forecastToned } from '../../../src/print/toned-scale';
import { RemedyError } from '../../../src/remedy/remedy-error';
import { counterTint } from '../../../src/remedy/tone/counter-tint';
import type { PrintRecord, Target } from '../../../src/shared/target';

function houseOf(b: number, change: Partial<PrintRecord> = {}): Target {
  const record: PrintRecord = {
    process: 'silver-halide',
    paper: [93, 0.4, 3],
    date: '2026-03-01',
    readings: [
      {
        encoding: 'rgb-neutral',
        orders: 4,
        greys: [{ L: 50, a: 1, b }],
        order: { a: 0.4, b: 0.5 },
        page: null,
        black: null,
      },
    ],
    ...change,
  };
  return { ...defaultTarget('silver-halide'), printRecord: record };
}

const WHOLE = { strength: 1, against: 'print' } as const;
const refused = (wanted: RegExp) => (error: Error) =>
  error instanceof RemedyError && wanted.test(error.message);

describe('a counter-tint', () => {
  it('brings the print to its grey, by the forecast', () => {
    const target = houseOf(4);
    const { tone } = counterTint(target, WHOLE);
    assert.ok(tone.b < -2.5, `b* ${tone.b}`);
    const { a, b } = forecastToned(tone.a, tone.b, target).tint;
    assert.ok(Math.hypot(a, b) < 0.3, `left: ${a}, ${b}`);
  });
  it('answers the paper too, where that is asked', () => {
    const target = houseOf(4);
    const { tone } = counterTint(target, { strength: 1, against: 'print and paper' });
    const { a, b } = forecastToned(tone.a, tone.b, target).absolute;
    assert.ok(Math.hypot(a, b) < 0.3, `left: ${a}, ${b}`);
    assert.ok(tone.b < counterTint(target, WHOLE).tone.b - 0.5);
  });
  it('is as strong as is asked', () => {
    const [half, whole] = [0.5, 1].map(strength => counterTint(houseOf(4), { ...WHOLE, strength }).tone);
    assert.ok(Math.abs(half.b - whole.b / 2) <= 0.06, `${half.b}, ${whole.b}`);
  });
  it('says what was read, and what no counter-tint can know', () => {
    const told = counterTint(houseOf(4), { ...WHOLE, strength: 0.5 }).told.join(' ');
    assert.match(told, /4 orders, the last on 2026-03-01.*to answer 50 % of it/);
    const [, ...figures] =
      /prints are a\* (\S+), b\* (\S+) off; .* file gets a\* (\S+), b\* (\S+), which by the forecast moves the prints by a\* (\S+), b\* (\S+):/.exec(
        told,
      )!;
    const [offA, offB, a, b, movedA, movedB] = figures.map(Number);
    const without = forecastToned(0, 0, houseOf(4)).tint;
    const answered = forecastToned(a, b, houseOf(4)).tint;
    assert.ok(Math.abs(answered.a - without.a - movedA) <= 0.051, told);
    assert.ok(Math.abs(answered.b - without.b - movedB) <= 0.051, told);
    // the sum of the sentence, to what rounding leaves of it
    assert.ok(Math.hypot(offA / 2 + movedA, offB / 2 + movedB) < 0.25, told);
    assert.match(told, /next order will differ by about \d.*no counter-tint can know.*test print/);
  });
  it('adds up along each axis, which the print takes on differently', () => {
    const target = houseOf(-1.9);
    target.printRecord!.readings[0].greys[0].a = 0.3;
    const [told] = counterTint(target, WHOLE).told;
    const [off, file, moved] = [...told.matchAll(/a\* (-?\d\.\d), b\* (-?\d\.\d)/g)].map(([, a, b]) => [
      +a,
      +b,
    ]);
    for (const axis of [0, 1]) assert.ok(Math.abs(off[axis] + moved[axis]) < 0.16, told);
    assert.notDeepEqual(file, moved);
    assert.doesNotMatch(told, /-0\.0/);
  });
  it('is refused without a record, and without greys that were sent so', () => {
    assert.throws(
      () => counterTint(defaultTarget('silver-halide'), WHOLE),
      refused(/there is no record of it.*test print/),
    );
    const [reading] = houseOf(4).printRecord!.readings;
    const other = houseOf(4, { readings: [{ ...reading, encoding: 'black-only' }] });
    assert.throws(() => counterTint(other, WHOLE), refused(/holds no greys that were sent as R = G = B/));
  });
  it('is refused for a paper that was not read', () =>
    assert.throws(
      () => counterTint(houseOf(4, { paper: null }), { strength: 1, against: 'print and paper' }),
      refused(/paper of this house was not read/),
    ));
  it('is refused where there is nothing to see, and where it would be no correction any more', () => {
    const even = houseOf(0);
    even.printRecord!.readings[0].greys[0].a = 0;
    assert.throws(() => counterTint(even, WHOLE), refused(/not seen: there is nothing to answer/));
    assert.throws(() => counterTint(houseOf(30), WHOLE), refused(/no correction any more/));
  });
});
