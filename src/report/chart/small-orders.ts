import { html } from '../page/html';

const WIDTH = 312;
const OWN = 10;
const GAP = 3;
const ORDER = 6;

/**
 * Possible orders as a drawing (SVG) for where there is little room: the greys of a file from paper to black, and below
 * them a row an order. All rows lie flush, so that neighbours show each other's tint. Colours are `#rrggbb`.
 * @param own the file's own greys
 * @param orders the same greys in each order
 */
export function smallOrders(
  own: readonly string[],
  orders: readonly (readonly string[])[],
): { svg: string; width: number; height: number } {
  const below = OWN + GAP;
  const height = below + ORDER * orders.length;
  const svg = html`<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${height}" viewBox="0 0 ${WIDTH} ${height}" shape-rendering="crispEdges">${row(own, 0, OWN)}${orders.map((greys, i) => row(greys, below + ORDER * i, ORDER))}</svg>`;
  return { svg: svg.text, width: WIDTH, height };
}

const row = (colours: readonly string[], top: number, height: number) =>
  colours.map((colour, i) => {
    const [left, right] = [i, i + 1].map(n => Math.round((n * WIDTH) / colours.length));
    return html`<path fill="${colour}" d="M${left} ${top}H${right}v${height}H${left}z"/>`;
  });
