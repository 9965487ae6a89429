// no-unit-test: it lives in a webview; test/e2e/suites/screen tests it there
import type { OverlayId } from '../../report/page/overlays';

/** Side of a pattern's tile. */
const TILE = 8;

/**
 * What a mark is drawn with: white beside black, so that it is seen on every grey, and told by its pattern, not by a
 * colour, which would tint the greys beside it.
 */
const STROKES: Record<OverlayId, (draw: CanvasRenderingContext2D, shift: number) => void> = {
  colour: (draw, shift) => {
    for (const x of [-TILE, 0, TILE]) line(draw, x + shift, TILE, x + TILE + shift, 0);
  },
  shadows: (draw, shift) => {
    for (const x of [-TILE, 0, TILE]) line(draw, x + shift, 0, x + TILE + shift, TILE);
  },
  lights: (draw, shift) => draw.rect(2 + shift, 2 + shift, 2, 2),
  ink: (draw, shift) => line(draw, 0, 2.5 + shift, TILE, 2.5 + shift),
};

function line(draw: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number) {
  draw.moveTo(x1, y1);
  draw.lineTo(x2, y2);
}

/** A tile of the pattern, CSS pixels by `ratio`. */
export function hatchTile(id: OverlayId, ratio: number): HTMLCanvasElement {
  const tile = document.createElement('canvas');
  tile.width = tile.height = Math.round(TILE * ratio);
  const draw = tile.getContext('2d')!;
  draw.scale(tile.width / TILE, tile.height / TILE);
  for (const [colour, shift] of [
    ['#000', 1],
    ['#fff', 0],
  ] as const) {
    draw.beginPath();
    STROKES[id](draw, shift);
    draw.strokeStyle = draw.fillStyle = colour;
    draw.lineWidth = 1;
    draw.stroke();
    if (id === 'lights') draw.fill();
  }
  return tile;
}
