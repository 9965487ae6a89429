import assert from 'node:assert/strict';
import { blackLightness } from '../../../src/picture/meaning/press';
import { linearLightness, PER_L, type TonePlane } from '../../../src/remedy/grey/plane';
import { blackPointScaled } from '../../../src/remedy/tone/black-point';
import { type SourceBlack, shiftedTones } from '../../../src/remedy/tone/shift';
import type { RemedyWish } from '../../../src/shared/remedy';
import { wishFor } from '../support';

const FULL = blackLightness(1);
const LIFT = Array.from({ length: 101 }, (_, L) => 10 + 0.9 * L);

/** Tones that a source holds -> what they become, and what is told. */
function shifted(tones: number[], black: SourceBlack, wish: Partial<RemedyWish>) {
  const plane: TonePlane = {
    width: tones.length,
    height: 1,
    index: Uint16Array.from(tones, L => Math.round(L * PER_L)),
    lightness: linearLightness(),
    alpha: null,
    tint: null,
    colour: null,
  };
  const { plane: out, told, black: record } = shiftedTones(plane, black, wishFor(wish));
  return { tones: Array.from(out.index, i => out.lightness[i]), told: told.join(' '), record };
}

function assertTones(found: number[], wanted: number[]) {
  found.forEach((L, i) => {
    assert.ok(Math.abs(L - wanted[i]) < 0.01, `${found}, not ${wanted}`);
  });
}

describe('tones of a result', () => {
  it('stay where nothing asks for a change', () => {
    for (const blackPoint of ['scaled', 'kept'] as const) {
      const found = shifted([0, 30, 100], { kind: 'light' }, { to: 'rgb-neutral', blackPoint });
      assertTones(found.tones, [0, 30, 100]);
      // nothing is said of a black point where nothing was done to one
      assert.deepEqual([found.told, found.record], ['', null]);
    }
  });
  it('of several inks stay in R = G = B, and that is told with the darkest of them', () => {
    const { tones, told, record } = shifted([9, 30, 100], { kind: 'none' }, { to: 'rgb-neutral' });
    assertTones(tones, [9, 30, 100]);
    assert.match(told, /no black point was scaled: the darkest tone is L\* 9/);
    assert.match(record!, /no black point scaled/);
  });
  it('of black ink alone open to full black, and that is told', () => {
    const found = shifted([16, 50, 100], { kind: 'ink', L: 16 }, { to: 'single-channel' });
    const { tones, told } = found;
    assert.equal(found.record, 'black point scaled from full black ink (L* 16) to L* 0');
    assertTones(tones, [16, 50, 100].map(blackPointScaled(16, 0)));
    assert.match(told, /L\* 16 on its paper, became the black of the grey channel, 0, .*ISO 18619/);
    assert.doesNotMatch(told, /R = G = B/);
    const rgb = shifted([16, 50, 100], { kind: 'ink', L: 16 }, { to: 'rgb-neutral' });
    assert.match(rgb.told, /L\* 16 on its paper, became R = G = B = 0,/);
  });
  it('of black ink alone stay, where black is kept, and that is told', () => {
    const { tones, told } = shifted([16, 50], { kind: 'ink', L: 16 }, { blackPoint: 'kept' });
    assertTones(tones, [16, 50]);
    assert.match(told, /dark grey of L\* 16/);
  });
  it('of R = G = B are brought into black ink, and come back as they were', () => {
    const { tones, told } = shifted([0, 50, 100], { kind: 'light' }, { to: 'black-only' });
    assertTones(tones, [0, 50, 100].map(blackPointScaled(0, FULL)));
    assert.match(told, /L\* 0 became full black ink/);
    assertTones(shifted(tones, { kind: 'ink', L: FULL }, { to: 'rgb-neutral' }).tones, [0, 50, 100]);
  });
  it('of R = G = B are cut off at black ink, where lightness is kept, and that is told', () => {
    const { tones, told } = shifted([0, 50], { kind: 'light' }, { to: 'black-only', blackPoint: 'kept' });
    assertTones(tones, [FULL, 50]);
    assert.match(told, /darker than full black ink/);
  });
  it('of several inks are brought into black ink only as far as they are darker', () => {
    const lighter = shifted([30, 80], { kind: 'none' }, { to: 'black-only' });
    assertTones(lighter.tones, [30, 80]);
    assert.match(lighter.told, /black ink alone reaches the darkest/);
    assert.match(lighter.record!, /no black point scaled/);
    const darker = shifted([6, 30, 80], { kind: 'none' }, { to: 'black-only' });
    assertTones(darker.tones, [6, 30, 80].map(blackPointScaled(6, FULL)));
    assert.match(darker.told, /L\* 6 became full black ink/);
    assert.match(darker.record!, /^black point scaled from L\* 6 to full black ink/);
  });
  it('of black ink alone stay in black ink alone', () => {
    const { tones, told } = shifted([FULL, 50, 100], { kind: 'ink', L: FULL }, { to: 'black-only' });
    assertTones(tones, [FULL, 50, 100]);
    assert.equal(told, '');
  });
  it('follow the curve between the blacks', () => {
    const lift = (L: number) => 10 + 0.9 * L;
    assertTones(shifted([0, 50], { kind: 'light' }, { curve: LIFT }).tones, [10, 55]);
    assertTones(
      shifted([0, 50], { kind: 'light' }, { curve: LIFT, to: 'black-only' }).tones,
      [0, 50].map(L => blackPointScaled(0, FULL)(lift(L))),
    );
    const open = blackPointScaled(16, 0);
    assertTones(
      shifted([16, 50], { kind: 'ink', L: 16 }, { curve: LIFT }).tones,
      [16, 50].map(L => lift(open(L))),
    );
  });
});
