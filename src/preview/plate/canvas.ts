// no-unit-test: it lives in a webview; test/e2e/suites/screen tests it there
import type { OverlayId } from '../../report/page/overlays';
import type { SeenBox } from '../../shared/look';
import { hatchTile } from './hatch';
import type { Run } from './runs';
import { inWindow, type Point, type Size, type View } from './view';

/** What is drawn, from the lowest on. */
export interface Layers {
  picture: Size;
  /** The whole picture, made small. */
  raster: ImageBitmap;
  /** A part of it at full resolution. */
  detail: { box: SeenBox; bitmap: ImageBitmap } | null;
  marks: { id: OverlayId; grid: Size; runs: readonly Run[] }[];
  cursor: Point | null;
}

/** A mark is never so small that it is not seen, CSS pixels. */
const LEAST_MARK = 4;
/** From here on a pixel of the picture is drawn as the square that it is: device pixels. */
const SQUARE = 2;
const CROSS = 12;

/** Draws a picture into its window. Lengths in CSS pixels; `ratio`: device pixels on one. */
export function drawLayers(
  canvas: HTMLCanvasElement,
  layers: Layers,
  view: View,
  window: Size,
  ratio: number,
) {
  const draw = canvas.getContext('2d')!;
  canvas.width = Math.round(window.width * ratio);
  canvas.height = Math.round(window.height * ratio);
  const at = (x: number, y: number) => {
    const point = inWindow(view, { x, y }, window);
    // whole device pixels: else a picture at 1:1 is blurred
    return { x: Math.round(point.x * ratio), y: Math.round(point.y * ratio) };
  };
  const { picture, raster, detail } = layers;
  draw.imageSmoothingQuality = 'high';
  const put = (bitmap: ImageBitmap, { x, y, width, height }: SeenBox) => {
    const from = at(x, y);
    const to = at(x + width, y + height);
    draw.imageSmoothingEnabled = (to.x - from.x) / bitmap.width < SQUARE;
    draw.drawImage(bitmap, from.x, from.y, to.x - from.x, to.y - from.y);
  };
  put(raster, { x: 0, y: 0, ...picture });
  if (detail) put(detail.bitmap, detail.box);
  draw.save();
  const [corner, end] = [at(0, 0), at(picture.width, picture.height)];
  draw.beginPath();
  draw.rect(corner.x, corner.y, end.x - corner.x, end.y - corner.y);
  draw.clip();
  for (const mark of layers.marks) {
    draw.beginPath();
    const least = LEAST_MARK * ratio;
    const [cellX, cellY] = [picture.width / mark.grid.width, picture.height / mark.grid.height];
    for (const { row, from, to } of mark.runs) {
      const first = at(from * cellX, row * cellY);
      const last = at(to * cellX, (row + 1) * cellY);
      draw.rect(first.x, first.y, Math.max(least, last.x - first.x), Math.max(least, last.y - first.y));
    }
    draw.fillStyle = draw.createPattern(hatchTile(mark.id, ratio), 'repeat')!;
    draw.fill();
  }
  draw.restore();
  if (layers.cursor) cross(draw, at(layers.cursor.x + 0.5, layers.cursor.y + 0.5), ratio);
}

/** Black and white, so that it is seen on every grey; open in the middle, where the pixel is. */
function cross(draw: CanvasRenderingContext2D, { x, y }: Point, ratio: number) {
  for (const [colour, width] of [
    ['#000', 3],
    ['#fff', 1],
  ] as const) {
    draw.beginPath();
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ]) {
      draw.moveTo(x + dx * 3 * ratio, y + dy * 3 * ratio);
      draw.lineTo(x + dx * CROSS * ratio, y + dy * CROSS * ratio);
    }
    draw.strokeStyle = colour;
    draw.lineWidth = width * ratio;
    draw.stroke();
  }
}
