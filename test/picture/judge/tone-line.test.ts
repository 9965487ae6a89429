import assert from 'node:assert/strict';
import { linePoint, ToneTable } from '../../../src/picture/judge/tone-line';
import { labCells } from './cells';

type Row = [number, number, number, number];

function lineOf(rows: Row[], ...believed: [least?: number, from?: number, to?: number]) {
  const { cells, lab } = labCells(rows);
  const table = new ToneTable();
  table.add(lab, cells.length, cells.count);
  const line = table.line(...believed);
  return (L: number) => [line.a[linePoint(L)], line.b[linePoint(L)]];
}

const near = (found: number[], wanted: number[], within: number) =>
  assert.ok(
    found.every((v, i) => Math.abs(v - wanted[i]) <= within),
    `${found}, not ${wanted}`,
  );

describe('the tone line', () => {
  it('is the tone of a picture at each lightness, and straight between', () => {
    const at = lineOf(Array.from({ length: 11 }, (_, i): Row => [i * 10, i - 5, 2 * i, 100]));
    near(at(30), [-2, 6], 0.13);
    near(at(35), [-1.5, 7], 0.13);
  });
  it('is the median: what few pixels have does not pull it', () => {
    const at = lineOf(
      Array.from({ length: 101 }, (_, L): Row[] => [
        [L, 3, 8, 90],
        [L, 60, 60, 10],
      ]).flat(),
    );
    near(at(50), [3, 8], 0.13);
  });
  it('is zero where noise is as much to one side as to the other', () => {
    const rows: Row[] = [];
    for (let L = 0; L <= 100; L++) for (let a = -6; a <= 6; a++) rows.push([L, a, -a, 10]);
    near(lineOf(rows)(50), [0, 0], 0.01);
  });
  it('of a grey picture takes no tone from a mark on a lightness of its own', () => {
    const rows = Array.from({ length: 60 }, (_, L): Row => [L, 0, 0, 100]);
    near(lineOf([...rows, [90, -5, 80, 500]])(90), [0, 0], 1e-9);
  });
  it('of a toned picture follows steep ends', () => {
    const at = lineOf(
      Array.from({ length: 401 }, (_, i): Row => [i / 4, 0, 0.4 * Math.min(i / 4, 100 - i / 4), 10]),
    );
    for (const L of [2, 10, 50, 90, 98]) near(at(L), [0, 0.4 * Math.min(L, 100 - L)], 0.25);
  });
  it('follows a very strong sepia', () => {
    const at = lineOf(Array.from({ length: 101 }, (_, L): Row => [L, 10, Math.min(L, 100), 10]));
    near(at(85), [10, 85], 0.13);
  });
  it('is none where each lightness has a colour of its own', () => {
    const at = lineOf([
      [30, 60, 20, 100],
      [50, -50, 30, 100],
      [70, 10, -40, 100],
      [90, 0, 60, 100],
    ]);
    for (const L of [30, 50, 70, 90]) near(at(L), [0, 0], 1e-9);
  });
  it('of one flat colour is that', () => near(lineOf([[60, 5, 10, 100]])(60), [5, 10], 0.13));
  it('rests on as many pixels as asked', () => {
    const rows = Array.from({ length: 100 }, (_, L): Row => [L, L < 40 ? -5 : 5, 0, 10]);
    near(lineOf(rows)(10), [-5, 0], 0.13);
    near(lineOf(rows, 1000)(10), [5, 0], 0.13);
  });
  it('of some lightnesses is carried on beyond them', () => {
    const rows = Array.from({ length: 101 }, (_, L): Row => [L, L < 20 || L > 80 ? 9 : 3, 0, 10]);
    const at = lineOf(rows, 0, 20, 80);
    for (const L of [0, 19, 50, 81, 100]) near(at(L), [3, 0], 0.13);
  });
  it('rests on all there is where that is less than asked', () =>
    near(lineOf([[60, 5, 10, 100]], 1e6)(60), [5, 10], 0.13));
  it('of nothing is neutral', () => assert.deepEqual(lineOf([])(50), [0, 0]));
});
