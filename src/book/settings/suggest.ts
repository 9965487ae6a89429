import { distance } from 'fastest-levenshtein';

/** The known word that was probably meant, or null: nearer than a third of its letters, or its beginning. */
export function suggest(word: string, known: Iterable<string>): string | null {
  const typed = plain(word);
  let best: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const far = slips(typed, plain(candidate));
    if (far < least) {
      least = far;
      best = candidate;
    }
  }
  if (best !== null && least <= Math.max(1, Math.floor(best.length / 3))) return best;
  const starting = startingWith(word, known);
  return starting.length === 1 ? starting[0] : null;
}

/** The known words that begin with what was typed; fewer than three letters are no beginning. */
export function startingWith(word: string, known: Iterable<string>): string[] {
  const typed = plain(word);
  return typed.length < 3 ? [] : [...known].filter(candidate => plain(candidate).startsWith(typed));
}

/** As many letters as were mistyped; two that changed places are one slip of the fingers. */
function slips(typed: string, meant: string): number {
  const at = [...meant].findIndex((letter, i) => letter !== typed[i]);
  const swapped = `${typed.slice(0, at)}${typed[at + 1]}${typed[at]}${typed.slice(at + 2)}`;
  return at >= 0 && swapped === meant ? 1 : distance(typed, meant);
}

/** People write `Silver Halide` and `gray`; the names are `silver-halide` and `grey`. */
const plain = (word: string) =>
  word
    .normalize('NFC')
    .toLowerCase()
    .replace(/[\s_]+/g, '-')
    .replace(/gray/g, 'grey')
    .replace(/color/g, 'colour');
