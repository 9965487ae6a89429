import assert from 'node:assert/strict';
import { inPicture, inWindow, kept, moved, seen, whole, zoomed } from '../../../src/preview/plate/view';

const picture = { width: 3000, height: 2000 };
const window = { width: 656, height: 456 };

describe('the view of a picture', () => {
  it('shows all of it with ground around, and enlarges none', () => {
    const all = whole(picture, window);
    assert.equal(all.scale, 0.2);
    assert.deepEqual(inWindow(all, { x: 0, y: 0 }, window), { x: 28, y: 28 });
    assert.equal(whole({ width: 40, height: 30 }, window).scale, 1);
  });

  it('keeps under the pointer what was there when it grows or shrinks', () => {
    const at = { x: 100, y: 300 };
    const view = whole(picture, window);
    const under = inPicture(view, at, window);
    for (const scale of [1, 0.05, 7]) {
      const there = inWindow(zoomed(view, scale, at, window), under, window);
      assert.ok(Math.hypot(there.x - at.x, there.y - at.y) < 1e-9, String(scale));
    }
  });

  it('goes no farther than the picture, and holds a small one in the middle', () => {
    const far = kept(moved({ scale: 1, x: 1500, y: 1000 }, 1e6, -1e6), picture, window, 0.2);
    assert.deepEqual(far, { scale: 1, x: 328, y: 2000 - 228 });
    const small = kept({ scale: 0.2, x: 0, y: 0 }, picture, window, 0.2);
    assert.deepEqual(small, { scale: 0.2, x: 1500, y: 1000 });
    assert.equal(kept({ scale: 0.001, x: 0, y: 0 }, picture, window, 0.2).scale, 0.2);
    assert.equal(kept({ scale: 1e6, x: 0, y: 0 }, picture, window, 0.2).scale, 32);
  });

  it('knows what is seen', () => {
    assert.deepEqual(seen(whole(picture, window), picture, window), {
      x: 0,
      y: 0,
      width: 3000,
      height: 2000,
    });
    const part = seen({ scale: 2, x: 1500, y: 1000 }, picture, window);
    assert.deepEqual(part, { x: 1336, y: 886, width: 328, height: 228 });
  });
});
