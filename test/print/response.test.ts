import assert from 'node:assert/strict';
import { defaultTarget } from '../../src/print';
import { pressOf } from '../../src/print/press';
import { respond } from '../../src/print/response';
import { covariances } from '../../src/print/scatter';

const NONE = { a: 0, b: 0 };
const cluster = (mean: number[]) => ({ weight: 1, mean, points: [mean], passed: NONE, conversion: NONE });

/** Standard normal numbers, the same at every run. */
function normals() {
  let random = 7919;
  const uniform = () => (random = (random * 48271) % 2147483647) / 2147483647;
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

describe('how a zone responds to drift', () => {
  const CASES = [
    ['silver-halide', [0.6, 0.6, 0.6]],
    ['silver-halide', [0.3, 0.3, 0.3]],
    ['offset-coated', [0.4, 0.31, 0.3, 0.15]],
    ['liquid-toner', [0.5, 0.4, 0.4, 0]],
  ] as const;
  for (const [process, device] of CASES)
    it(`${process} ${device}: the Jacobian's covariance is that of Monte Carlo draws, within 10 %`, () => {
      const { model, aim } = pressOf(defaultTarget(process));
      const { moves } = respond(model, aim, [cluster([...device])]);
      const { order, page } = covariances({ ...moves, shared: NONE }, model.drifts);
      const normal = normals();
      const lab = new Float64Array(3);
      const sums = { a: 0, b: 0, aa: 0, bb: 0, ab: 0 };
      const draws = 6000;
      for (let i = 0; i < draws; i++) {
        model.lab(
          device,
          model.drifts.map(drift => normal() * Math.hypot(drift.order, drift.page)),
          lab,
        );
        const a = lab[1] - aim.a(lab[0]);
        const b = lab[2] - aim.b(lab[0]);
        sums.a += a / draws;
        sums.b += b / draws;
        sums.aa += (a * a) / draws;
        sums.bb += (b * b) / draws;
        sums.ab += (a * b) / draws;
      }
      const drawn = {
        a: Math.sqrt(sums.aa - sums.a ** 2),
        b: Math.sqrt(sums.bb - sums.b ** 2),
        ab: sums.ab - sums.a * sums.b,
      };
      const a = Math.sqrt(order.aa + page.aa);
      const b = Math.sqrt(order.bb + page.bb);
      assert.ok(Math.abs(a / drawn.a - 1) < 0.1, `a* ${a}, drawn ${drawn.a}`);
      assert.ok(Math.abs(b / drawn.b - 1) < 0.1, `b* ${b}, drawn ${drawn.b}`);
      const correlation = drawn.ab / (drawn.a * drawn.b);
      assert.ok(Math.abs((order.ab + page.ab) / (a * b) - correlation) < 0.1);
    });

  it('a darker black is no tint: the aim of a coloured paper fades with it', () => {
    const { model, aim } = pressOf({ ...defaultTarget('offset-uncoated'), paper: 'uncoated-warm' });
    const black = [0, 0, 0, 0.5];
    const { moves } = respond(model, aim, [cluster(black)]);
    const tone = model.drifts.findIndex(({ name }) => name === 'black');
    const moved = model.drifts.map((drift, i) => (i === tone ? Math.hypot(drift.order, drift.page) : 0));
    const [before, after] = [new Float64Array(3), new Float64Array(3)];
    model.lab(black, null, before);
    model.lab(black, moved, after);
    assert.ok(Math.abs(after[2] - before[2]) > 0.1);
    assert.ok(Math.abs(moves.drift[tone * 2 + 1]) < Math.abs(after[2] - before[2]) / 2);
  });

  it('what a conversion passes on or leaves open is added', () => {
    const { model, aim } = pressOf(defaultTarget('offset-coated'));
    const plain = respond(model, aim, [cluster([0, 0, 0, 0.5])]);
    const passed = respond(model, aim, [
      { ...cluster([0, 0, 0, 0.5]), passed: { a: 2, b: -1 }, conversion: { a: 1, b: 0 } },
    ]);
    assert.ok(Math.abs(passed.a - plain.a - 2) < 1e-9 && Math.abs(passed.b - plain.b + 1) < 1e-9);
    assert.ok(passed.moves.shared.a >= 1);
  });
});
