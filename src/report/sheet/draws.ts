/** One possible order, drawn without knowing the picture. */
export interface Draw {
  /** Two independent standard normal values: how far the order lies from the centre, in units of its spread. */
  u: number;
  v: number;
  /** 0-1, evenly spread: chooses among routes where nobody knows which is taken. */
  pick: number;
}

const GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

/**
 * `n` possible orders that stand for all of them: from each n-th of the distribution one. Their distances from the
 * centre are stratified (the radius of a two-dimensional normal distribution by its inverse, sqrt(-2 ln(1 - u))), their
 * directions are turned by the golden angle, their routes are stratified too; then they are shuffled. The same `seed`
 * gives the same orders.
 */
export function drawsOf(seed: number, n: number): Draw[] {
  const random = generator(seed);
  const turn = random() * 2 * Math.PI;
  const picks = shuffled(
    Array.from({ length: n }, (_, i) => (i + random()) / n),
    random,
  );
  const draws = picks.map((pick, i): Draw => {
    const radius = Math.sqrt(-2 * Math.log(1 - (i + random()) / n));
    const angle = turn + i * GOLDEN_ANGLE;
    return { u: radius * Math.cos(angle), v: radius * Math.sin(angle), pick };
  });
  return shuffled(draws, random);
}

/** Fisher-Yates. */
function shuffled<T>(list: T[], random: () => number): T[] {
  for (let i = list.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [list[i], list[j]] = [list[j], list[i]];
  }
  return list;
}

/** Mulberry32: a small generator of evenly spread numbers 0-1, the same everywhere. Nothing secret hangs on it. */
function generator(seed: number): () => number {
  let state = Math.imul(seed + 1, 0x9e3779b9);
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
