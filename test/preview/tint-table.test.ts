import assert from 'node:assert/strict';
import { tableOf, tint, tintTable } from '../../src/preview/tint-table';
import { sheetOf } from '../../src/report/sheet';
import { picture } from '../report/text/support';

const { conditions, scale } = sheetOf(picture('a.png'), [], { light: null, series: 0 });
const [order] = conditions[0].orders;
const rgb = (colour: string) => [1, 3, 5].map(at => Number.parseInt(colour.slice(at, at + 2), 16));

describe('a picture drawn as it prints', () => {
  it('has at the greys of the strips the colours of the strips', () => {
    for (const seen of ['alone', 'beside'] as const) {
      const table = tintTable(scale.lightness, order.lab[seen], 1);
      for (const [i, own] of scale.colours.entries()) {
        const [value] = rgb(own);
        const drawn = table.map(channel => channel[value]);
        const strip = rgb(order[seen][i]);
        // a grey of the file is a whole number, the strip's lightness is not
        for (const c of [0, 1, 2])
          assert.ok(Math.abs(drawn[c] - strip[c]) <= 2, `${own}: ${drawn}, ${strip}`);
      }
    }
  });

  it('is tinted so many times as strongly, and as light', () => {
    const lab: [number, number, number][] = [
      [95, 1, -2],
      [20, 1, -2],
    ];
    const at = (times: number) => tintTable([100, 0], lab, times).map(channel => channel[128]);
    const spread = ([r, , b]: number[]) => b - r;
    assert.ok(spread(at(1)) > 0);
    assert.ok(Math.abs(spread(at(4)) - 4 * spread(at(1))) <= 3, `${at(1)}, ${at(4)}`);
    assert.ok(Math.abs(at(4)[1] - at(1)[1]) <= 4);
  });

  it('comes from a drawing too, straight between its values', () => {
    const [red, green] = tableOf([
      [0, 1, 0],
      [0.5, 0.5, 0.5],
      [0, 0, 0],
    ]);
    assert.deepEqual([red[0], red[64], red[255], green[9]], [0, 128, 0, 128]);
  });

  it('loses the tone of the file, and keeps colour that was left over', () => {
    const even = tintTable(
      [100, 0],
      [
        [100, 0, 0],
        [0, 0, 0],
      ],
      1,
    );
    const pixels = () => Uint8ClampedArray.of(140, 100, 100, 255);
    const grey = pixels();
    tint(grey, even, false);
    assert.ok(grey[0] === grey[1] && grey[1] === grey[2] && grey[3] === 255, String(grey));
    const residual = pixels();
    tint(residual, even, true);
    assert.ok(residual[0] > residual[1] + 30);
  });
});
