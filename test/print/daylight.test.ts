import assert from 'node:assert/strict';
import { defaultTarget } from '../../src/print';
import { daylightZones } from '../../src/print/daylight';
import { pressOf } from '../../src/print/press';
import { routeOptions } from '../../src/print/routes';
import { samplesOf } from '../../src/print/samples';
import { greyScale } from './facts';

describe('zones under daylight', () => {
  const picture = samplesOf(greyScale())!;
  const target = defaultTarget('offset-coated');
  const [separated] = routeOptions('inks', 'separated', 'rgb', true);
  const [black] = routeOptions('inks', 'black-plate', 'rgb', true);
  it('are the same under every light of one press, and worked out once', () => {
    const day = daylightZones(separated, picture, pressOf(target));
    assert.equal(daylightZones(separated, picture, pressOf({ ...target, light: 'A' })), day);
  });
  it('differ by route, paper and picture', () => {
    const day = daylightZones(separated, picture, pressOf(target));
    assert.notEqual(daylightZones(black, picture, pressOf(target)), day);
    assert.notEqual(daylightZones(separated, picture, pressOf({ ...target, paper: 'matt-coated' })), day);
    assert.notEqual(daylightZones(separated, samplesOf(greyScale())!, pressOf(target)), day);
  });
});
