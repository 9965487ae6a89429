import assert from 'node:assert/strict';
import {
  adviceFor,
  adviceTable,
  defaultTarget,
  type EncodingAdvice,
  papersFor,
  processes,
} from '../../src/print';
import { worthAsking } from '../../src/print/evenness';
import type { GreyEncoding } from '../../src/shared/target';

const table = adviceTable();
const row = (process: string, paper: string, encoding: string): EncodingAdvice =>
  table.find(line => line.process === process && line.paper === paper && line.encoding === encoding)!;

const isForeign = ({ process, encoding }: EncodingAdvice) =>
  ['silver-halide', 'dye-transfer'].includes(process) && ['black-only', 'four-channel'].includes(encoding);

/** Whole orders between the worst and the best way of the house. */
const apart = ({ evenOrdersBest, evenOrdersWorst }: EncodingAdvice) =>
  Math.round(evenOrdersBest) - Math.round(evenOrdersWorst);

describe('table of advice', () => {
  it('has a line for every process, usual paper and grey encoding', () => {
    assert.equal(
      table.length,
      processes.reduce((sum, { id }) => sum + papersFor(id).length * 4, 0),
    );
    for (const line of table) {
      assert.ok(line.evenOrders > 0 && line.evenOrders < 10);
      assert.ok(line.evenOrdersWorst <= line.evenOrders && line.evenOrders <= line.evenOrdersBest);
      assert.equal(line.better === null, line.verdict !== 'convert');
      assert.ok(line.black > 3 && line.black < 40);
      assert.ok(line.blackDeepest <= line.black && line.black <= line.blackWeakest);
    }
  });
  it('finds that silver halide varies least between encodings, presses of four inks most', () => {
    // common practice, no source: a sanity check
    const range = (process: string, paper: string) => {
      const orders = table.filter(l => l.process === process && l.paper === paper).map(l => l.evenOrders);
      return Math.max(...orders) - Math.min(...orders);
    };
    assert.ok(range('silver-halide', 'photo-lustre') < range('inkjet', 'matt-coated'));
    assert.ok(range('silver-halide', 'photo-lustre') < range('dry-toner', 'gloss-coated-bright'));
  });
  it('finds black alone the steadiest of inks and the flattest', () => {
    const kept = (encoding: 'black-only' | 'four-channel') =>
      adviceFor({ ...defaultTarget('offset-coated'), paper: 'gloss-coated', route: 'inks' }).find(
        line => line.encoding === encoding,
      )!;
    assert.ok(kept('black-only').evenOrders > kept('four-channel').evenOrders + 1);
    assert.ok(kept('black-only').pageScatter < 0.1 && kept('four-channel').pageScatter > 0.2);
    // black L*: 16 coated (here TR 006's 15) against about 10 of four inks
    assert.ok(kept('black-only').black > kept('four-channel').black + 3);
  });
  it('asks for a conversion where that gains 2 orders of 10, and nowhere else', () => {
    for (const line of table) {
      const same = table.filter(l => l.process === line.process && l.paper === line.paper);
      if (isForeign(line)) continue;
      // inks of a file may reach a press that nobody asked, but nobody is sent there
      const sent = same.filter(({ encoding }) => /^(rgb-neutral|single-channel)$/.test(encoding));
      const gains = sent.filter(({ evenOrders }) => evenOrders - line.evenOrders >= 2);
      assert.equal(line.verdict === 'convert', gains.length > 0, `${line.process} ${line.encoding}`);
      if (line.better) assert.ok(gains.some(({ encoding }) => encoding === line.better));
    }
    assert.ok(table.some(line => line.verdict === 'convert'));
  });
  it('sends R = G = B to silver halide, and calls what it says there a guess', () => {
    const line = row('silver-halide', 'photo-lustre', 'rgb-neutral');
    assert.deepEqual([line.verdict, line.ground], ['send', 'guess']);
    assert.equal(row('offset-coated', 'gloss-coated', 'black-only').ground, 'measured');
    // the one press that was measured printed no black alone
    assert.equal(row('liquid-toner', 'gloss-coated-bright', 'black-only').ground, 'guess');
  });
  it('has no inks sent to a process that prints R, G, B: the profile that turns them is a guess', () => {
    // common practice, no source; the rule `untagged` says the same
    const inks = table.filter(isForeign);
    assert.equal(inks.length, 2 * 2 * 2);
    for (const line of inks) {
      assert.equal(line.verdict, 'convert');
      assert.match(line.better!, /^(rgb-neutral|single-channel)$/);
    }
    const only = adviceFor({ ...defaultTarget('silver-halide'), encodings: ['black-only'] });
    assert.deepEqual(
      only.map(line => line.verdict),
      ['ask'],
    );
  });
  it('asks where worst and best, as they are shown, are more than 4 apart, and nowhere else', () => {
    for (const line of table.filter(l => !isForeign(l) && l.verdict !== 'convert'))
      assert.equal(line.verdict === 'ask', apart(line) > 4, `${line.process} ${line.paper} ${line.encoding}`);
    assert.equal(worthAsking([0.14, 0.56]), true, '9 and 4');
    assert.equal(worthAsking([0.14, 0.54]), false, '9 and 5');
  });
  it('names the black of black ink alone, not its mean with that of a house that separates it', () => {
    // L* of solid black ink: 16 coated (here TR 006's 15), 31 uncoated (FOGRA47)
    for (const [process, paper, L] of [
      ['offset-coated', 'gloss-coated', 15],
      ['offset-uncoated', 'uncoated', 31],
    ] as const) {
      const { black, blackDeepest, blackWeakest } = row(process, paper, 'black-only');
      assert.ok(Math.abs(black - L) < 1, `${process}: ${black}`);
      assert.equal(blackWeakest, black);
      assert.ok(blackDeepest < black - 2, `separated it prints deeper: ${blackDeepest}`);
    }
  });
  it('asks where it depends on the print house alone', () => {
    const unknown = row('inkjet', 'matt-coated', 'single-channel');
    assert.equal(unknown.verdict, 'ask');
    const known = adviceFor({ ...defaultTarget('inkjet'), paper: 'matt-coated', route: 'black-plate' });
    assert.ok(known.every(line => line.verdict !== 'ask'));
  });
  it('does not send from an encoding that was read of the house to one that was not', () => {
    const reading = { orders: 3, order: { a: 0.4, b: 0.4 }, page: null, black: null };
    const target = {
      ...defaultTarget('liquid-toner'),
      printRecord: {
        process: 'liquid-toner' as const,
        paper: null,
        date: '2026-10-01',
        readings: [{ ...reading, encoding: 'rgb-neutral' as const, greys: [{ L: 50, a: 0, b: -5 }] }],
      },
    };
    const even = (of: GreyEncoding) => adviceFor(target).find(({ encoding }) => encoding === of)!;
    assert.ok(even('black-only').evenOrders - even('rgb-neutral').evenOrders > 5);
    assert.notEqual(even('rgb-neutral').verdict, 'convert');
  });
  it('offers only what the target takes', () => {
    const lines = adviceFor({
      ...defaultTarget('dry-toner'),
      paper: 'gloss-coated-bright',
      encodings: ['four-channel', 'rgb-neutral'],
    });
    assert.deepEqual(
      lines.map(line => line.encoding),
      ['rgb-neutral', 'four-channel'],
    );
  });
});
