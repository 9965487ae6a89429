import type { BookPicture } from '../../shared/finding';

/** Mean chroma (CIELAB) from which the others have a tone rather than a cast. Own choice: from 4 on a tint is obvious. */
const TONED = 4;

/** Why pictures differ from the others, and what to do. `others`: those that are alike. */
export function causeOf(odd: readonly BookPicture[], others: readonly BookPicture[]): string {
  const [its, it, original] =
    new Set(odd.map(({ path }) => path)).size > 1
      ? ['Their', 'them', 'originals']
      : ['Its', 'it', 'original'];
  if (odd[0].intent === 'toned')
    return `The tone itself differs: tone ${it} again from the grey ${original} with the settings of the others.`;
  const again = `again from ${its.toLowerCase()}`;
  if (odd[0].facts.space === 'cmyk')
    return `${its} inks are mixed in another way: separate ${it} ${again} grey ${original} as the others were.`;
  return areToned(others)
    ? `The others are toned in another way: if their tone is meant, tone ${it} ${again} grey ${original} as they are, and list all of them under "toned" in the settings' "intent"; if it is not, turn all of them into grey again.`
    : `${its} values have another colour: turn ${it} into grey ${again} ${original} as the others were, or list all of them under "toned" in the settings' "intent" if tones are meant.`;
}

/** The same of pictures of which no two are alike. */
export function causeAmong([first, ...more]: readonly BookPicture[]): string {
  const all = more.length > 1 ? 'all of them' : 'both';
  if (first.intent === 'toned')
    return `The tones themselves differ: tone ${all} again from the grey originals with the same settings.`;
  if (first.facts.space === 'cmyk')
    return `Their inks are mixed in different ways: separate ${all} again in one way from the grey originals.`;
  return `Their values have different colours: turn ${all} into grey again in one way from the originals; if tones are meant, give ${all} the same one, and list ${all} under "toned" in the settings' "intent".`;
}

/** Half of them or more. */
const areToned = (pictures: readonly BookPicture[]): boolean =>
  pictures.filter(picture => meanChroma(picture) >= TONED).length * 2 >= pictures.length;

function meanChroma({ facts: { zones } }: BookPicture): number {
  const area = zones.reduce((sum, { weight }) => sum + weight, 0);
  return zones.reduce((sum, { weight, a, b }) => sum + (weight / area) * Math.hypot(a, b), 0);
}
