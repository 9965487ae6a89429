import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import { type Intent, loadIcc, openIccApart } from '../../src/colour/icc';
import { need } from '../tools/need';

// Profiles and the reference program as Debian packages them: used here only, never shipped.
const ICC = '/usr/share/color/icc';
const profile = (name: string, apt: string) => need(`${ICC}/${name}`, apt);

/** Lab by LittleCMS' own command line; unbounded floats, `values` in its units (RGB 0-255, inks 0-100, grey 0-255). */
function transicc(file: string, intent: number, values: number[][]): number[][] {
  const out = execFileSync(
    need('/usr/bin/transicc', 'liblcms2-utils'),
    ['-n', '-i', file, '-o', '*Lab4', '-t', String(intent), '-c', '0', '-d', '1'],
    {
      input: values.map(v => `${v.join('\n')}\n`).join(''),
      encoding: 'utf8',
      stdio: ['pipe', 'pipe', 'ignore'],
    },
  );
  return out.match(/[^\n]+/g)!.map(line => line.match(/-?\d+\.\d+/g)!.map(Number));
}

const CASES: { file: string; apt: string; unit: number; values: number[][] }[] = [
  {
    file: 'ghostscript/default_cmyk.icc',
    apt: 'libgs-common',
    unit: 100,
    values: [
      [0, 0, 0, 0],
      [50, 40, 40, 0],
      [0, 0, 0, 57],
      [12.5, 80, 3, 22],
      [100, 100, 100, 100],
    ],
  },
  {
    file: 'sRGB.icc',
    apt: 'icc-profiles-free',
    unit: 255,
    values: [
      [0, 0, 0],
      [128, 128, 128],
      [31, 200, 77],
      [255, 255, 255],
    ],
  },
  { file: 'ghostscript/default_gray.icc', apt: 'libgs-common', unit: 255, values: [[0], [20], [128], [255]] },
];

describe('ICC profiles', () => {
  for (const { file, apt, unit, values } of CASES)
    for (const [intent, number] of [
      ['relative', 1],
      ['absolute', 3],
    ] as [Intent, number][])
      it(`${file} (${intent}) agrees with transicc to 0.01 dE76`, async () => {
        const path = profile(file, apt);
        const reference = transicc(path, number, values);
        const opened = (await loadIcc()).open(fs.readFileSync(path));
        const lab = opened.transformToLab(
          intent,
          values.flat().map(v => v / unit),
        );
        opened.close();
        assert.equal(reference.length, values.length);
        reference.forEach((row, i) => {
          const difference = Math.hypot(...row.map((value, j) => value - lab[i * 3 + j]));
          assert.ok(difference < 0.01, `${values[i]}: ${lab.slice(i * 3, i * 3 + 3)}, transicc says ${row}`);
        });
      });

  it('goes back from Lab to inks: the grey comes out again', async () => {
    const opened = (await loadIcc()).open(
      fs.readFileSync(profile('ghostscript/default_cmyk.icc', 'libgs-common')),
    );
    assert.deepEqual([opened.space, opened.class, opened.channels], ['cmyk', 'output', 4]);
    const inks = opened.transformFromLab('relative', [60, 0, 0]);
    assert.ok(inks.every(value => value >= 0 && value <= 1));
    const lab = opened.transformToLab('relative', inks);
    opened.close();
    assert.ok(Math.hypot(lab[0] - 60, lab[1], lab[2]) < 2, `${lab}`);
  });

  it('takes many colours at once, more than one turn', async () => {
    const opened = (await loadIcc()).open(fs.readFileSync(profile('sRGB.icc', 'icc-profiles-free')));
    const lab = opened.transformToLab('relative', new Float64Array(3 * 40_000).fill(0.5));
    opened.close();
    assert.equal(lab.length, 120_000);
    assert.equal(lab[0], lab[119_997]);
  });

  it('gives one colour at a time exactly what it gives many, in a library of its own too', async () => {
    const bytes = fs.readFileSync(profile('ghostscript/default_cmyk.icc', 'libgs-common'));
    const apart = await openIccApart(bytes);
    const values = [0.1, 0.2, 0.3, 0.4, 0.9, 0, 0.1, 0];
    const many = apart.transformToLab('absolute', values);
    const one = apart.toLab('absolute');
    const lab = new Float64Array(3);
    for (let i = 0; i < 2; i++) {
      one(values.slice(i * 4, i * 4 + 4), lab);
      assert.deepEqual(Array.from(lab), Array.from(many.slice(i * 3, i * 3 + 3)));
    }
    apart.close();
    assert.throws(() => one(values, lab), /closed/);
    await assert.rejects(openIccApart(bytes.subarray(0, 300)), /cut short/);
  });

  it('says so when a profile was closed, and when values do not fit', async () => {
    const opened = (await loadIcc()).open(fs.readFileSync(profile('sRGB.icc', 'icc-profiles-free')));
    assert.throws(
      () => opened.transformToLab('relative', [0.1, 0.2]),
      /no whole number of 3-channel colours/,
    );
    opened.close();
    opened.close();
    assert.throws(() => opened.transformToLab('relative', [0, 0, 0]), /closed/);
  });

  it('survives damage: an error in words, or colours that are numbers, and the next profile works', async () => {
    const good = fs.readFileSync(profile('ghostscript/default_cmyk.icc', 'libgs-common'));
    let random = 1;
    const next = (n: number) => (random = (random * 48271) % 2147483647) % n;
    let refused = 0;
    for (let round = 0; round < 60; round++) {
      const bad = Uint8Array.from(good);
      // the tag table and the heads of the tags, where a wrong number does most harm
      for (let i = 0; i < 6; i++) bad[128 + next(1200)] = next(256);
      try {
        const opened = (await loadIcc()).open(bad);
        for (const intent of ['relative', 'absolute'] as const)
          assert.ok(opened.transformToLab(intent, [0.5, 0.4, 0.4, 0]).every(Number.isFinite));
        opened.close();
      } catch (error) {
        assert.match((error as Error).message, /ICC profile/);
        refused++;
      }
    }
    assert.ok(refused > 10, `${refused} refused`);
    const opened = (await loadIcc()).open(good);
    assert.ok(opened.transformToLab('relative', [0, 0, 0, 0])[0] > 99);
    opened.close();
  });
});
