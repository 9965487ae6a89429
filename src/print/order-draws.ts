/** Possible orders, each to be used with both signs. */
export const ORDERS = 64;

const known = new Map<number, Float64Array[]>();

/**
 * Possible orders that stand for all: for each of several independent causes its standard normal value in every order.
 * The same every time: an additive recurrence by powers of the root of x^(d+1) = x + 1 (a generalised golden ratio),
 * which fills d dimensions evenly, turned into normal values in pairs (Box and Muller), then made to have a variance of 1
 * each and no correlation at all (Gram and Schmidt).
 */
export function orderDraws(causes: number): readonly Float64Array[] {
  let draws = known.get(causes);
  if (!draws) known.set(causes, (draws = makeDraws(causes)));
  return draws;
}

function makeDraws(causes: number): Float64Array[] {
  const dimensions = causes + (causes % 2);
  let ratio = 2;
  for (let turn = 0; turn < 64; turn++) ratio = (1 + ratio) ** (1 / (dimensions + 1));
  const uniform = (order: number, i: number) => (0.5 + (order + 1) * ratio ** -(i + 1)) % 1;
  const draws = Array.from({ length: causes }, (_, i) => {
    const pair = i - (i % 2);
    return Float64Array.from({ length: ORDERS }, (_, order) => {
      const radius = Math.sqrt(-2 * Math.log(1 - uniform(order, pair)));
      const angle = 2 * Math.PI * uniform(order, pair + 1);
      return radius * (i === pair ? Math.cos(angle) : Math.sin(angle));
    });
  });
  const product = (x: Float64Array, y: Float64Array) =>
    x.reduce((sum, value, order) => sum + value * y[order], 0) / ORDERS;
  draws.forEach((draw, i) => {
    for (const before of draws.slice(0, i)) {
      const along = product(draw, before);
      for (let order = 0; order < ORDERS; order++) draw[order] -= along * before[order];
    }
    const sd = Math.sqrt(product(draw, draw));
    for (let order = 0; order < ORDERS; order++) draw[order] /= sd;
  });
  return draws;
}
