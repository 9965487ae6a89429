import assert from 'node:assert/strict';
import { visibleMarks } from '../../../src/rules/residual-chroma/visible';

const mark = (width: number, max: number) => ({ x: 0, y: 0, width, height: width, max });
const seen = (width: number, max: number, perMm = 10) =>
  visibleMarks([mark(width, max)], perMm, 2.5).length > 0;

describe('visible marks', () => {
  it('need twice the distance at 1 mm: own choice, see the page', () => {
    assert.ok(seen(1000, 2.6));
    assert.ok(!seen(1000, 2.4));
    assert.ok(seen(10, 5.1));
    assert.ok(!seen(10, 4.9));
  });
  it('thin out below 0.2 mm', () => {
    const [full] = visibleMarks([mark(8, 160)], 40, 2.5);
    assert.equal(full.distance, 160);
    const [thin] = visibleMarks([mark(8, 160)], 80, 2.5);
    assert.equal(thin.distance, 40, 'half the edge, a quarter of the area');
  });
  it('are seen by their printed size, not by their pixels', () => {
    assert.ok(seen(8, 10, 10));
    assert.ok(!seen(8, 10, 100));
  });
  it('come strongest first', () =>
    assert.deepEqual(
      visibleMarks([mark(50, 20), mark(50, 40)], 10, 2.5).map(m => m.distance),
      [40, 20],
    ));
});
