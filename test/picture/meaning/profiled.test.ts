import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import { loadIcc } from '../../../src/colour/icc';
import { AdditiveRgb } from '../../../src/picture/meaning/additive';
import { LabGrid } from '../../../src/picture/meaning/grid';
import { profiled } from '../../../src/picture/meaning/profiled';
import { need } from '../../tools/need';
import { random } from '../pass/random';

/** Profiles as Debian packages them: used here only, never shipped. */
const folder = '/usr/share/color/icc/ghostscript';
const file = (name: string) => need(`${folder}/${name}`, 'libgs-common');

/** Relative Lab by LittleCMS' own command line. `unit`: its range of a channel. */
function transicc(profile: string, values: number[][], unit: number): number[][] {
  const out = execFileSync(
    need('/usr/bin/transicc', 'liblcms2-utils'),
    ['-n', '-i', profile, '-o', '*Lab4', '-t', '1', '-c', '0', '-d', '1'],
    {
      input: values.map(row => `${row.map(v => ((v / 255) * unit).toFixed(6)).join('\n')}\n`).join(''),
      encoding: 'utf8',
      stdio: ['pipe', 'pipe', 'ignore'],
    },
  );
  return out.match(/[^\n]+/g)!.map(line => line.match(/-?\d+\.\d+/g)!.map(Number));
}

async function differences(name: string, space: 'grey' | 'rgb' | 'cmyk', values: number[][], unit: number) {
  const profile = (await loadIcc()).open(fs.readFileSync(file(name)));
  const meaning = profiled(profile, space);
  profile.close();
  const lab = new Float32Array(values.length * 3);
  meaning.lab(Float32Array.from(values.flat()), values.length, lab);
  const reference = transicc(file(name), values, unit);
  assert.equal(reference.length, values.length);
  return {
    meaning,
    errors: reference.map((row, i) => Math.hypot(...row.map((value, c) => value - lab[i * 3 + c]))),
  };
}

const mean = (list: number[]) => list.reduce((a, b) => a + b, 0) / list.length;
const next = random(17);
const colours = (channels: number, n: number) =>
  Array.from({ length: n }, () => Array.from({ length: channels }, () => Math.round(next() * 255)));

describe("Lab through a picture's own profile", () => {
  for (const name of ['srgb.icc', 'a98.icc'])
    it(`agrees with transicc to 0.1 dE76 for ${name}, whose channels add up`, async () => {
      const { meaning, errors } = await differences(name, 'rgb', colours(3, 300), 255);
      assert.ok(meaning instanceof AdditiveRgb);
      assert.ok(Math.max(...errors) < 0.1, `${Math.max(...errors)}`);
    });

  it('agrees with transicc to 0.05 for a grey profile', async () => {
    const { errors } = await differences('default_gray.icc', 'grey', colours(1, 100), 255);
    assert.ok(Math.max(...errors) < 0.05, `${Math.max(...errors)}`);
  });

  it('agrees with transicc for inks: 0.1 dE76 on average, 0.8 at most, on a grid of its own', async () => {
    const { meaning, errors } = await differences('default_cmyk.icc', 'cmyk', colours(4, 1000), 100);
    assert.ok(meaning instanceof LabGrid);
    assert.ok(mean(errors) < 0.1, `mean ${mean(errors)}`);
    assert.ok(Math.max(...errors) < 0.8, `most ${Math.max(...errors)}`);
  });

  it('agrees with transicc to 0.5 on the greys of inks', async () => {
    const greys = Array.from({ length: 52 }, (_, i) => [
      [0, 0, 0, 5 * i],
      [4 * i, 3.4 * i, 3.4 * i, i],
    ]).flat();
    const { errors } = await differences('default_cmyk.icc', 'cmyk', greys, 100);
    assert.ok(Math.max(...errors) < 0.5, `${Math.max(...errors)}`);
  });

  it('of a grey picture with an RGB profile is that of equal channels', async () => {
    const profile = (await loadIcc()).open(fs.readFileSync(file('srgb.icc')));
    const lab = new Float32Array(3);
    profiled(profile, 'grey').lab(Float32Array.of(119), 1, lab);
    profile.close();
    assert.ok(Math.abs(lab[0] - 50.03) < 0.05 && lab[1] === 0 && lab[2] === 0, `${lab}`);
  });
});
