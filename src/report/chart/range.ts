// no-unit-test: part of a drawing that test/report/chart/index.test.ts reads whole
import type { Tones } from '../../shared/sheet';
import { type Html, html } from '../page/html';

const WIDTH = 220;
const HEIGHT = 300;
/** Of the drawing: left, top, and the side of the square from L* 0 to 100. */
const LEFT = 34;
const TOP = 24;
const SIDE = 176;
/** Within this many L* of black nothing is told apart. */
const LOST = 3;

/** Print lightness over file lightness, between the press's black and its paper; `apart`: with nothing between its tones. */
export function range({ zones, range: { black, white } }: Tones, apart: boolean): Html {
  const x = (L: number) => px(LEFT + (L / 100) * SIDE);
  const y = (L: number) => px(TOP + SIDE - (L / 100) * SIDE);
  const points = zones.toSorted((one, other) => one.L - other.L);
  const line = points.map(({ L, Lprint }, i) => `${i ? 'L' : 'M'}${x(L)} ${y(Lprint)}`).join('');
  return html`<svg x="320" y="0" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}" aria-hidden="true">
<text x="${LEFT}" y="14" class="small">L* in print, over L* of the file</text>
<rect x="${LEFT}" y="${TOP}" width="${SIDE}" height="${SIDE}" fill="#fff" stroke="#999"/>
<rect x="${LEFT}" y="${TOP}" width="${SIDE}" height="${px(y(white) - TOP)}" fill="#ddd"/>
<rect x="${LEFT}" y="${y(black)}" width="${SIDE}" height="${px(TOP + SIDE - y(black))}" fill="#ddd"/>
<rect x="${LEFT}" y="${y(black + LOST)}" width="${SIDE}" height="${px(y(black) - y(black + LOST))}" fill="#eee"/>
<path d="M${LEFT} ${TOP + SIDE}L${LEFT + SIDE} ${TOP}" stroke="#bbb"/>
${points.length > 1 && !apart ? html`<path d="${line}" fill="none" stroke="#000" stroke-width="2"/>` : points.map(({ L, Lprint }) => html`<circle cx="${x(L)}" cy="${y(Lprint)}" r="3" fill="#000"/>`)}
<text x="${LEFT - 4}" y="${px(y(white) + 4)}" class="small end">${white.toFixed(0)}</text>
<text x="${LEFT - 4}" y="${px(y(black) + 4)}" class="small end">${black.toFixed(0)}</text>
<text x="${LEFT}" y="${TOP + SIDE + 14}" class="small">0</text>
<text x="${LEFT + SIDE}" y="${TOP + SIDE + 14}" class="small end">100</text>
<text x="${LEFT}" y="${TOP + SIDE + 32}" class="small">Grey: lighter than the paper,</text>
<text x="${LEFT}" y="${TOP + SIDE + 46}" class="small">darker than the deepest black.</text>
</svg>`;
}

const px = (value: number) => Math.round(value * 100) / 100;
