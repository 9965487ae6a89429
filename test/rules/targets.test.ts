import assert from 'node:assert/strict';
import {
  forTarget,
  ground,
  groundInFull,
  guessOfInks,
  isPhotographic,
  keepsInks,
  processName,
} from '../../src/rules/targets';
import { picture, target } from './support/pictures';

describe('targets', () => {
  it('are named only where there are several', () => {
    const [a, b] = [target('silver-halide', { name: 'dummy' }), target('dry-toner', { name: 'edition' })];
    assert.equal(forTarget(a, [a]), '');
    assert.equal(forTarget(a, [a, b]), ' (target "dummy")');
  });
  it('name their process inside a sentence', () => {
    assert.equal(processName(target('silver-halide')), 'silver halide');
    assert.equal(processName(target('offset-coated')), 'coated offset', 'no comma that breaks the sentence');
  });
  it('keep ink values on presses, unless the route says otherwise', () => {
    assert.ok(isPhotographic(target('dye-transfer')));
    assert.ok(!keepsInks(target('silver-halide')));
    assert.ok(keepsInks(target('offset-coated')));
    assert.ok(!keepsInks(target('offset-coated', { route: 'separated' })));
  });
  it('say that inks on a process without inks are a guess, unless its prints were read', () => {
    const guess = (...of: Parameters<typeof picture>) => {
      const it = picture(...of);
      return guessOfInks(it, it.forecasts[0]);
    };
    assert.match(
      guess('black-only'),
      /^ This stands on a guess about what the print house does with inks: .*\.$/,
    );
    assert.equal(guess('rgb-neutral'), '');
    assert.equal(guess('black-only', { targets: [target('offset-coated', { route: 'inks' })] }), '');
    const it = picture('black-only');
    const [forecast] = it.forecasts;
    const record = { ...forecast, condition: { ...forecast.condition, basis: 'record' as const } };
    assert.equal(guessOfInks(it, record), '');
  });
  it('say how near a forecast is to the user', () => {
    const [forecast] = picture('rgb-neutral', { targets: [target('dry-toner')] }).forecasts;
    assert.match(ground(forecast), /not your printer/);
    const record = { ...forecast, condition: { ...forecast.condition, basis: 'record' as const } };
    assert.match(ground(record), /delivered before$/);
    assert.equal(groundInFull(forecast), ground(forecast));
    const read = { ...record, ground: ['3 orders read', 'more'] };
    assert.equal(
      groundInFull(read),
      'by what this print house has delivered before: 3 orders read',
      'a record tells what it is',
    );
  });
});
