import assert from 'node:assert/strict';
import { inkModel } from '../../../src/print/inks/model';
import { paperOf } from '../../../src/print/papers';
import { profileAxis } from '../../../src/print/profile/axis';
import { profileTable } from '../../../src/print/profile/model';
import { profilePaper } from '../../../src/print/profile/paper';
import { readPressProfile } from '../../../src/print/profile/read';
import { fourInk, printerRgb } from './profiles';

const none = { a: 0, b: 0 };
const still = { tone: { order: 0, page: 0 }, blackShade: none, colouredGrey: none };

describe('the separation in a profile', () => {
  it('runs from bare paper to its black, darker with every step, near the paper’s own hue', async () => {
    const profile = await readPressProfile(fourInk());
    const { white } = profilePaper(profile, paperOf('gloss-coated'));
    const model = inkModel({ table: profileTable(profile), paper: white, scatter: still, ground: [] });
    const axis = profileAxis(profile, model)!;
    assert.ok(axis.inks.subarray(0, 4).every(ink => ink < 0.01));
    assert.equal(axis.black, axis.L[axis.L.length - 1]);
    for (let i = 1; i < axis.L.length; i++) assert.ok(axis.L[i] < axis.L[i - 1]);
    const lab = new Float64Array(3);
    const middle = axis.L.findIndex(L => L < 55);
    model.lab(axis.inks.subarray(middle * 4, middle * 4 + 4), null, lab);
    // a separation by relative colorimetry keeps the paper's chromaticity: its a*, b* shrink with the cube root of Y
    assert.ok(Math.hypot(lab[1] - white[1] * 0.6, lab[2] - white[2] * 0.6) < 1.5, `${lab} on ${white}`);
  });

  it('is only in profiles of four inks', async () => {
    const rgb = await readPressProfile(printerRgb());
    assert.equal(profileAxis(rgb, null as never), null);
  });
});
