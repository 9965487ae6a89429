import assert from 'node:assert/strict';
import { processes } from '../../../src/print';
import { parsePrintRecord, recordProblem } from '../../../src/print/record/read';

const good = {
  record: 1,
  process: 'silver-halide',
  paper: [93, 0.4, -2.5],
  date: '2026-03-01',
  readings: [
    {
      encoding: 'rgb-neutral',
      orders: 3,
      greys: [{ L: 50, a: 3.7, b: 1.5 }],
      order: { a: 0.5, b: 0.5 },
      page: null,
      black: 7.5,
    },
  ],
};
const change = (edit: (record: typeof good) => void) => {
  const record = structuredClone(good);
  edit(record);
  return JSON.stringify(record);
};

describe('record of a print house', () => {
  it('is read', () => {
    const record = parsePrintRecord(JSON.stringify(good));
    assert.deepEqual(record.paper, [93, 0.4, -2.5]);
    assert.deepEqual(record.readings[0].order, { a: 0.5, b: 0.5 });
    assert.equal(record.readings[0].page, null);
  });
  const faults: [string, string, RegExp][] = [
    ['text', 'hello', /no JSON/],
    ['a list', '[]', /the record should be an object/],
    ['another version', change(r => Object.assign(r, { record: 2 })), /"record" should be 1/],
    [
      'an unknown process',
      change(r => Object.assign(r, { process: 'riso' })),
      /"process" should be one of silver-halide/,
    ],
    ['no readings', change(r => Object.assign(r, { readings: [] })), /nothing was read yet/],
    ['an encoding twice', change(r => r.readings.push(r.readings[0])), /rgb-neutral twice/],
    ['no greys', change(r => Object.assign(r.readings[0], { greys: [] })), /readings\[0\]\.greys" is empty/],
    [
      'a wild tint',
      change(r => Object.assign(r.readings[0].greys[0], { a: 200 })),
      /greys\[0\]\.a" should be a number from -60 to 60/,
    ],
    ['half an order', change(r => Object.assign(r.readings[0], { orders: 1.5 })), /whole number/],
    ['no day', change(r => Object.assign(r, { date: 'March' })), /"date" should be a day/],
    [
      'a black that is lighter than a grey',
      change(r => Object.assign(r.readings[0], { black: 60 })),
      /"readings\[0\]\.black" is L\* 60, and "readings\[0\]\.greys\[0\]" is darker, L\* 50/,
    ],
    [
      'a grey that is lighter than the paper',
      change(r => Object.assign(r, { paper: [45, 0, 0] })),
      /"readings\[0\]\.greys\[0\]" is L\* 50, lighter than the paper, L\* 45/,
    ],
    ['a paper of two numbers', change(r => Object.assign(r, { paper: [1, 2] })), /three numbers/],
  ];
  for (const [name, text, message] of faults)
    it(`with ${name} is refused in plain words`, () => assert.throws(() => parsePrintRecord(text), message));

  it('serves the process it was read from only', () => {
    const record = parsePrintRecord(JSON.stringify(good));
    const of = (id: string) => processes.find(process => process.id === id)!;
    assert.equal(recordProblem(of('silver-halide'), record), null);
    assert.match(recordProblem(of('inkjet'), record)!, /the record is of Silver halide.*, not of Inkjet/);
  });
});
