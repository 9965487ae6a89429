import assert from 'node:assert/strict';
import { labToXyz } from '../../../src/colour/lab';
import { paperOf } from '../../../src/print/papers';
import { genericPrinting } from '../../../src/print/printing';
import { processOf } from '../../../src/print/processes';
import { aroundProfile, profileModel, profileTable } from '../../../src/print/profile/model';
import { readPressProfile } from '../../../src/print/profile/read';
import { fourInk, printerRgb } from './profiles';

describe('a model by profile', () => {
  it('of four inks is an ink table of the profile’s own colours', async () => {
    const profile = await readPressProfile(fourInk());
    const [xyz, lab] = [new Float64Array(3), new Float64Array(3)];
    profileTable(profile).xyz([0.3, 0.2, 0.2, 0.1], xyz);
    profile.lab([0.3, 0.2, 0.2, 0.1], lab);
    labToXyz(lab, lab);
    assert.deepEqual(Array.from(xyz), Array.from(lab));
    assert.deepEqual(aroundProfile(model().scatter).tone, model().scatter.tone);
  });

  it('of R, G, B prints the profile’s colours and drifts as the process does', async () => {
    const profile = await readPressProfile(printerRgb());
    const white = new Float64Array(3);
    profile.lab([1, 1, 1], white);
    const paper = { ...paperOf('photo-lustre'), white: [white[0], white[1], white[2]] as const };
    const { daylight, under } = genericPrinting(processOf('silver-halide'), paper);
    const same = (device: ArrayLike<number>) => device;
    const parts = {
      profile,
      white: paper.white,
      daylight,
      toProfile: same,
      toGeneric: same,
      dimensions: 3 as const,
      ground: [],
    };
    const made = profileModel({ ...parts, generic: daylight });
    const [own, is, drifted, generic, moved] = Array.from({ length: 5 }, () => new Float64Array(3));
    const rgb = [0.5, 0.52, 0.47];
    profile.lab(rgb, own);
    made.lab(rgb, null, is);
    assert.deepEqual(Array.from(is), Array.from(own));
    made.lab(rgb, [0.02, 0, 0], drifted);
    daylight.lab(rgb, null, generic);
    daylight.lab(rgb, [0.02, 0, 0], moved);
    for (let i = 0; i < 3; i++) assert.ok(Math.abs(drifted[i] - is[i] - (moved[i] - generic[i])) < 1e-9);

    const lamp = under('A').model;
    const lit = profileModel({ ...parts, generic: lamp });
    lit.lab([1, 1, 1], null, is);
    lit.white.forEach((value, i) => {
      assert.ok(Math.abs(is[i] - value) < 1e-6);
    });
    assert.ok(lit.dataSpread(50, rgb).a > made.dataSpread(50, rgb).a);
  });

  it('on another paper keeps its black and takes the new white', async () => {
    const profile = await readPressProfile(printerRgb());
    const paper = paperOf({ lab: [90, 0, 5] });
    const { daylight } = genericPrinting(processOf('silver-halide'), paper);
    const same = (device: ArrayLike<number>) => device;
    const made = profileModel({
      profile,
      white: paper.white,
      daylight,
      generic: daylight,
      toProfile: same,
      toGeneric: same,
      dimensions: 3,
      ground: [],
    });
    const [lab, own] = [new Float64Array(3), new Float64Array(3)];
    made.lab([1, 1, 1], null, lab);
    paper.white.forEach((value, i) => {
      assert.ok(Math.abs(lab[i] - value) < 1e-4);
    });
    made.lab([0, 0, 0], null, lab);
    profile.lab([0, 0, 0], own);
    assert.ok(Math.abs(lab[0] - own[0]) < 1e-6);
  });
});

function model() {
  const { model: inks } = processOf('offset-coated');
  if (inks.kind !== 'inks') throw new Error('offset prints with inks');
  return inks;
}
