import assert from 'node:assert/strict';
import { defaultTarget, readPressProfile } from '../../src/print';
import { pressOf } from '../../src/print/press';
import { fourInk } from './profile/profiles';

describe('a press', () => {
  const target = defaultTarget('offset-coated');

  it('is made once for a target, whatever the target is called', () => {
    assert.equal(pressOf(target), pressOf({ ...target, name: 'dummy' } as typeof target));
    assert.notEqual(pressOf(target), pressOf({ ...target, paper: 'uncoated' }));
    assert.notEqual(pressOf(target), pressOf({ ...target, inkLimit: 240 }));
  });

  it('is the same in daylight under every light: only the view changes', () => {
    const lit = pressOf({ ...target, light: 'LED-B3' });
    const day = pressOf(target);
    assert.equal(lit.daylight, day.daylight);
    assert.equal(day.model, day.daylight);
    assert.notEqual(lit.model, lit.daylight);
    assert.equal(day.withoutBrightener, null);
    assert.notEqual(lit.withoutBrightener, null);
    assert.equal(pressOf({ ...target, paper: 'grade-3-coated', light: 'A' }).withoutBrightener, null);
  });

  it('aims at its paper as seen under its own light', () => {
    const lit = pressOf({ ...target, paper: 'gloss-coated-bright', light: 'LED-B3' });
    assert.ok(lit.daylightAim.b(95) < -5.9);
    assert.ok(lit.aim.b(95) > -3);
  });

  it('by the print house’s profile is another press, with that profile’s one separation', async () => {
    const press = pressOf({ ...target, pressProfile: await readPressProfile(fourInk()) });
    assert.equal(press.basis, 'profile');
    assert.notEqual(press, pressOf(target));
    assert.equal(press.generations.length, 1);
    assert.ok(press.axis(press.generations[0]).black < 20);
    assert.equal(pressOf(target).generations.length, 3);
  });

  it('is not known by a name that nobody gave it', () => {
    assert.throws(() => pressOf({ ...target, process: 'potato' as never }), /no process "potato"; known are/);
    assert.throws(() => pressOf({ ...target, paper: 'bark' as never }), /no paper "bark"; known are/);
  });
});
