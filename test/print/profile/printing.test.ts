import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { defaultTarget, forecastValue } from '../../../src/print';
import { processOf } from '../../../src/print/processes';
import { profileProblem } from '../../../src/print/profile/printing';
import { readPressProfile } from '../../../src/print/profile/read';
import { need } from '../../tools/need';
import { fourInk, fourInkFile, printerGrey, printerRgb } from './profiles';

/** Absolute Lab of inks (percent) by LittleCMS' own command line, floats. */
function transicc(file: string, inks: number[]): number[] {
  const out = execFileSync(
    need('/usr/bin/transicc', 'liblcms2-utils'),
    ['-n', '-i', file, '-o', '*Lab4', '-t', '3', '-c', '0', '-d', '1'],
    { input: `${inks.join('\n')}\n`, encoding: 'utf8', stdio: ['pipe', 'pipe', 'ignore'] },
  );
  return out.match(/-?\d+\.\d+/g)!.map(Number);
}

describe('forecasts by the print house’s profile', () => {
  it('stated inks print what transicc says, to 0.01 dE76', async () => {
    const target = { ...defaultTarget('offset-coated'), pressProfile: await readPressProfile(fourInk()) };
    for (const inks of [
      [50, 40, 40, 0],
      [0, 0, 0, 50],
      [20, 15, 14, 60],
    ]) {
      const { zones, condition } = forecastValue({ space: 'cmyk', values: inks.map(v => v / 100) }, target);
      const lab = transicc(fourInkFile(), inks);
      const [{ Lprint, a, b }] = zones;
      assert.ok(Math.hypot(Lprint - lab[0], a - lab[1], b - lab[2]) < 0.01, `${inks}: ${Lprint} ${a} ${b}`);
      assert.equal(condition.basis, 'profile');
    }
  });

  it('its own separation takes the place of guessed ones; its spread stays the process’s', async () => {
    const target = { ...defaultTarget('offset-coated'), route: 'separated' as const };
    const value = { space: 'rgb' as const, values: [0.5, 0.5, 0.5] };
    const generic = forecastValue(value, target);
    const own = forecastValue(value, { ...target, pressProfile: await readPressProfile(fourInk()) });
    assert.equal(generic.routes?.length, 3);
    assert.equal(own.routes, undefined);
    assert.ok(own.spread.order.a > 0.5 && own.spread.order.a < 3);
    assert.match(own.ground[0], /profile/);
    assert.ok(own.ground.some(sentence => sentence.startsWith('a guess: how the press drifts')));
  });

  it('an RGB profile serves photographic and ink processes', async () => {
    const pressProfile = await readPressProfile(printerRgb());
    for (const process of ['silver-halide', 'inkjet'] as const) {
      const target = { ...defaultTarget(process), pressProfile };
      const f = forecastValue({ space: 'rgb', values: [0.5, 0.5, 0.5] }, target);
      const lab = new Float64Array(3);
      pressProfile.lab([0.5, 0.5, 0.5], lab);
      assert.ok(Math.abs(f.zones[0].a - lab[1]) < 1e-6, `${process} ${f.zones[0].a}`);
      assert.ok(f.spread.order.a > 0.5);
      const lit = forecastValue({ space: 'rgb', values: [0.5, 0.5, 0.5] }, { ...target, light: 'LED-B1' });
      assert.ok(Math.hypot(lit.parts.light.a, lit.parts.light.b) > 0.1);
    }
  });

  it('a grey profile gives the tone of black, colours stay those of the process', async () => {
    const pressProfile = await readPressProfile(printerGrey());
    const target = { ...defaultTarget('offset-coated'), pressProfile };
    const black = forecastValue({ space: 'cmyk', values: [0, 0, 0, 0.5] }, target);
    // gamma 2.2 on the target's paper: 0.2176 of the way from 0 to Y 87.6
    assert.ok(Math.abs(black.zones[0].Lprint - 51.0) < 1, `${black.zones[0].Lprint}`);
    const brown = forecastValue({ space: 'cmyk', values: [0.5, 0.5, 0.5, 0.1] }, target);
    assert.ok(brown.tint.a > 3);
    const photo = forecastValue(
      { space: 'rgb', values: [0.5, 0.5, 0.5] },
      { ...defaultTarget('silver-halide'), pressProfile },
    );
    assert.ok(Math.abs(photo.zones[0].Lprint - 50) < 2);
  });

  it('a profile for inks is refused by a process that takes R, G, B', async () => {
    const profile = await readPressProfile(fourInk());
    assert.match(profileProblem(processOf('silver-halide'), profile)!, /for four inks, but Silver halide/);
    assert.equal(profileProblem(processOf('inkjet'), profile), null);
  });
});
