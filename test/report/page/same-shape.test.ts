import assert from 'node:assert/strict';
import { sameShape } from '../../../src/report/page/same-shape';

const of = (fullWidth: number, fullHeight: number) => ({ fullWidth, fullHeight });

describe('two pictures of one shape', () => {
  it('may differ in size, and by a pixel that was rounded', () => {
    assert.ok(sameShape(of(1440, 960), of(720, 480)));
    assert.ok(sameShape(of(1441, 961), of(360, 240)));
  });

  it('are neither cropped nor turned', () => {
    assert.ok(!sameShape(of(1440, 960), of(1440, 900)));
    assert.ok(!sameShape(of(1440, 960), of(960, 1440)));
  });
});
