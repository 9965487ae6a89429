import assert from 'node:assert/strict';
import { defaultTarget, forecastPicture, forecastValue } from '../../../src/print';
import { rescaled } from '../../../src/print/record/black';
import type { GreyEncoding, PrintRecord, Target } from '../../../src/shared/target';
import { greyScale, inkScale } from '../facts';

const reading = (encoding: GreyEncoding, black: number | null) => ({
  encoding,
  orders: 3,
  greys: [{ L: 50, a: 1, b: -2 }],
  order: { a: 0.5, b: 0.5 },
  page: null,
  black,
});
const target = (...readings: PrintRecord['readings']): Target => ({
  ...defaultTarget('silver-halide'),
  printRecord: { process: 'silver-halide', paper: null, date: '2026-03-01', readings },
});
const four = inkScale(v => [0.9 * v, 0.8 * v, 0.8 * v, v], 'four-channel');
const generic = defaultTarget('silver-halide');

describe('black of a record', () => {
  it('is that of the machine, whatever was sent to it', () => {
    const read = target(reading('rgb-neutral', 14));
    const before = forecastPicture(four, generic)!.range;
    for (const forecast of [
      forecastPicture(greyScale(), read)!,
      forecastValue({ space: 'grey', values: [0.5] }, read),
      forecastPicture(four, read)!,
    ]) {
      const { black, blackDeepest, blackWeakest, blackRead } = forecast.range;
      assert.deepEqual([black, blackDeepest, blackWeakest, blackRead], [14, 14, 14, true]);
    }
    const inks = forecastPicture(four, read)!;
    assert.equal(inks.condition.basis, 'generic', 'its tint was not read');
    assert.ok(before.black < 8 && !before.blackRead);
    assert.ok(inks.range.blockedShare > before.blockedShare, 'and more of it is lost');
  });
  it('leaves a black that the machine makes paler paler still', () => {
    const black = inkScale(v => [0, 0, 0, v], 'black-only');
    const before = forecastPicture(black, generic)!.range.black;
    const after = forecastPicture(black, target(reading('rgb-neutral', 14)))!;
    assert.ok(before > 10 && after.range.black > before, `${before} ${after.range.black}`);
    assert.ok(after.ground.some(line => /by which black in this encoding is L\* \d\d/.test(line)));
  });
  it('of black ink turned into R, G, B says nothing of a deeper one', () => {
    const { range } = forecastPicture(greyScale(), target(reading('black-only', 20)))!;
    assert.deepEqual([range.black < 8, range.blackRead], [true, false]);
  });
  it('of another encoding serves where the own one was read without it', () => {
    const read = target(reading('single-channel', 12), reading('rgb-neutral', null));
    assert.equal(forecastPicture(greyScale(), read)!.range.black, 12);
  });
  it('is said in place of the guess that it answers', () => {
    const guess = /^a guess: black of L\* 6/;
    const lines = (target: Target) => forecastPicture(four, target)!.ground;
    assert.ok(lines(generic).some(line => guess.test(line)));
    const read = lines(target(reading('rgb-neutral', 14)));
    assert.ok(!read.some(line => guess.test(line)), read.join('\n'));
    assert.ok(
      read.includes("black of L* 14 read from the house's prints (of R = G = B; last reading 2026-03-01)"),
    );
    assert.ok(
      read.some(line => /^a guess: drift/.test(line)),
      'the others stay',
    );
    const unread = lines(target(reading('rgb-neutral', null)));
    assert.ok(
      unread.some(line => guess.test(line)),
      'and it stays where no black was read',
    );
  });
});

describe('tones between another black and the same paper', () => {
  it('keep the paper, move the black and stay in order', () => {
    const move = rescaled(6, 14, 93);
    assert.ok(Math.abs(move(6) - 14) < 1e-9 && Math.abs(move(93) - 93) < 1e-9);
    assert.ok(move(30) > 30 && move(30) < move(31));
  });
});
