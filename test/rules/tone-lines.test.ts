import assert from 'node:assert/strict';
import { toneAt, toneSteps } from '../../src/rules/tone-lines';
import { picture, toneOf } from './support/pictures';

describe('tone lines', () => {
  it('leave out black, paper and lightnesses that hold next to nothing', () => {
    const zones = toneOf([
      [5, 9, 9],
      [30, 1, 2],
      [60, 3, 4],
      [98, 9, 9],
    ]);
    zones[2].weight = 0.01;
    const { facts } = picture('rgb-toned', {
      facts: { chroma: { ...picture('rgb-toned').facts.chroma!, zones } },
    });
    assert.deepEqual(
      toneSteps(facts).map(step => step.L),
      [30],
    );
  });
  it('take neighbours together that are seen only together', () => {
    const zones = toneOf([
      [30, 1, 2],
      [80, 2, 0],
      [90, 4, 2],
    ]);
    for (const zone of zones.slice(1)) zone.weight = 0.015;
    const { facts } = picture('rgb-toned', {
      facts: { chroma: { ...picture('rgb-toned').facts.chroma!, zones } },
    });
    const [, lights] = toneSteps(facts);
    assert.deepEqual([lights.L, lights.a, lights.b, lights.weight], [85, 3, 1, 0.03]);
  });
  it('run straight between steps, and to nothing at black and paper', () => {
    const steps = [
      { L: 20, weight: 1, a: 2, b: 4 },
      { L: 60, weight: 1, a: 4, b: 8 },
    ];
    assert.deepEqual(toneAt(steps, 40), { a: 3, b: 6 });
    assert.deepEqual(toneAt(steps, 10), { a: 1, b: 2 });
    assert.deepEqual(toneAt(steps, 80), { a: 2, b: 4 });
    assert.deepEqual(toneAt([], 50), { a: 0, b: 0 });
    assert.deepEqual(toneAt(steps, 0), { a: 0, b: 0 });
  });
});
