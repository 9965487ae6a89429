import assert from 'node:assert/strict';
import { greyAim } from '../../src/print/aim';

describe('grey aim', () => {
  // ISO 12647-2:2013, 4.2.8 and Annex A, as coded in a published thesis (hdl.handle.net/10609/138386) and evaluated
  // here: paper, L*cmy, then L*, a*, b*
  const published: { paper: [number, number, number]; Lcmy: number; aims: [number, number, number][] }[] = [
    {
      paper: [95, 1.5, -6],
      Lcmy: 23.26,
      aims: [
        [90, 1.411, -5.645],
        [75, 1.145, -4.578],
        [62.72, 0.926, -3.705],
        [50, 0.7, -2.801],
        [30, 0.345, -1.379],
      ],
    },
    {
      paper: [93.5, 2.5, -10],
      Lcmy: 34.61,
      aims: [
        [93.5, 2.5, -10],
        [90, 2.374, -9.495],
        [75, 1.832, -7.33],
        [62.72, 1.389, -5.557],
        [50, 0.93, -3.721],
      ],
    },
    {
      paper: [95, 1, -4],
      Lcmy: 23,
      aims: [
        [90, 0.941, -3.764],
        [75, 0.764, -3.056],
        [30, 0.233, -0.931],
      ],
    },
  ];
  for (const { paper, Lcmy, aims } of published)
    for (const [L, a, b] of aims)
      it(`paper ${paper.join('/')}, L* ${L}: ${a}/${b}`, () => {
        const aim = greyAim(paper, Lcmy);
        assert.ok(Math.abs(aim.a(L) - a) < 0.0006, `a* ${aim.a(L)}`);
        assert.ok(Math.abs(aim.b(L) - b) < 0.0006, `b* ${aim.b(L)}`);
      });

  it('keeps 0.15 of the paper below the darkest grey without black, and never more than all of it', () => {
    const aim = greyAim([93.5, 2.5, -10], 34.61);
    assert.equal(aim.share(30), 0.15);
    assert.equal(aim.share(5), 0.15);
    assert.equal(aim.share(96), 1);
  });
});
