import assert from 'node:assert/strict';
import { defaultTarget } from '../../src/print';
import { printedTones } from '../../src/print/printed-tones';
import type { PrintRecord } from '../../src/shared/target';

const record: PrintRecord = {
  process: 'silver-halide',
  paper: null,
  date: '2026-03-01',
  readings: [
    {
      encoding: 'rgb-neutral',
      orders: 2,
      greys: [{ L: 50, a: 0, b: 1 }],
      order: null,
      page: null,
      black: 12,
    },
  ],
};

describe('a scale of greys in print', () => {
  it('rises from black to paper', () => {
    for (const encoding of ['rgb-neutral', 'single-channel', 'black-only'] as const) {
      const { printed, black, white } = printedTones(encoding, defaultTarget('offset-coated'));
      assert.equal(printed.length, 101);
      for (let L = 1; L <= 100; L++) assert.ok(printed[L] >= printed[L - 1], `${encoding} ${L}`);
      assert.ok(printed[0] >= black - 0.05 && Math.abs(printed[100] - white) < 0.05);
    }
  });
  it('of a calibrated photographic process keeps its proportions', () => {
    const { printed, proportional } = printedTones('rgb-neutral', defaultTarget('silver-halide'));
    printed.forEach((L, i) => {
      assert.ok(Math.abs(L - proportional[i]) < 0.5, `${i}: ${L}, ${proportional[i]}`);
    });
  });
  it('begins at the black that was read, where there is a record', () => {
    const target = { ...defaultTarget('silver-halide'), printRecord: record };
    const { printed, black, white, basis } = printedTones('rgb-neutral', target);
    assert.equal(basis, 'record');
    assert.ok(Math.abs(printed[0] - 12) < 0.01 && black === 12);
    assert.ok(Math.abs(printed[100] - white) < 0.01);
    const generic = printedTones('rgb-neutral', defaultTarget('silver-halide'));
    assert.ok(Math.abs(printed[80] - generic.printed[80]) < 1);
  });
  it('says how many ways a house may take', () => {
    assert.equal(printedTones('rgb-neutral', defaultTarget('silver-halide')).ways, 1);
    assert.ok(printedTones('single-channel', defaultTarget('dry-toner')).ways > 1);
  });
});
