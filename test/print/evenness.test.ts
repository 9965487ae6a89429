import assert from 'node:assert/strict';
import {
  adviceFor,
  adviceTable,
  defaultTarget,
  type EncodingAdvice,
  papersFor,
  processes,
} from '../../src/print';

const table = adviceTable();
const row = (process: string, paper: string, encoding: string): EncodingAdvice =>
  table.find(line => line.process === process && line.paper === paper && line.encoding === encoding)!;

const isForeign = ({ process, encoding }: EncodingAdvice) =>
  ['silver-halide', 'dye-transfer'].includes(process) && ['black-only', 'four-channel'].includes(encoding);

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
  it('asks for no conversion that gains less than 2 orders of 10', () => {
    for (const line of table) {
      const same = table.filter(l => l.process === line.process && l.paper === line.paper);
      if (isForeign(line)) continue;
      const best = Math.max(...same.filter(l => !isForeign(l)).map(l => l.evenOrders));
      assert.equal(
        line.verdict === 'convert',
        best - line.evenOrders >= 2,
        `${line.process} ${line.encoding}`,
      );
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
  it('asks where it depends on the print house alone', () => {
    const unknown = row('inkjet', 'matt-coated', 'single-channel');
    assert.equal(unknown.verdict, 'ask');
    const known = adviceFor({ ...defaultTarget('inkjet'), paper: 'matt-coated', route: 'black-plate' });
    assert.ok(known.every(line => line.verdict !== 'ask'));
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
