import assert from 'node:assert/strict';
import { adviceFor, defaultTarget, forecastValue } from '../../../src/print';
import { encodingLines, ownLine } from '../../../src/report/sheet/encoding-lines';

describe('the other encodings on a sheet', () => {
  const target = defaultTarget('offset-coated');
  const lines = encodingLines(target, 'black-only');

  it('are those of the advice, the picture’s own marked', () => {
    assert.deepEqual(
      lines.map(line => line.encoding),
      adviceFor(target).map(line => line.encoding),
    );
    assert.deepEqual(
      lines.filter(line => line.own).map(line => line.encoding),
      ['black-only'],
    );
  });

  it('leave the picture its own figures, by the orders in which its own tint is seen', () => {
    const forecast = forecastValue({ space: 'cmyk', values: [0, 0, 0, 0.5] }, target);
    const own = ownLine({ ...forecast, tint: { ...forecast.tint, seen: 0.6 } }, lines);
    assert.equal(own.even, '4');
    assert.notEqual(lines.find(line => line.own)!.even, '4');
  });

  it('say the price of black alone: the flattest black of them where inks are kept', () => {
    const kept = encodingLines({ ...target, route: 'inks' }, 'black-only');
    const blackOf = (encoding: string) => Number(kept.find(line => line.encoding === encoding)!.black);
    assert.ok(blackOf('black-only') > blackOf('four-channel') + 3);
    // not known what the house does: from one to the other, never their mean
    assert.match(lines.find(line => line.own)!.black, /^\d+ to \d+$/);
  });

  it('never promise ten orders of ten', () => {
    for (const { even } of lines) assert.doesNotMatch(even, /\b10\b/);
  });

  it('are there for a paper of the user’s own', () => {
    const own = encodingLines({ ...target, paper: { lab: [92, 0, 4] } }, 'rgb-neutral');
    assert.equal(own.length, lines.length);
  });
});
