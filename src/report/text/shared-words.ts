import type { Conversion } from '../../shared/conversion';

/** Sentences that several pictures share. */
export interface SharedWords {
  sentences: string[];
  pictures: ReadonlySet<Conversion>;
  /** What a picture refers to it by; null: it is of all of them. */
  number: number | null;
}

/** A sentence that fewer share is said with each of them (own choice). */
const MANY = 3;

/** What is told of many pictures, to be said once: sentences of the same pictures together, the widest first. */
export function sharedWords(all: readonly Conversion[]): SharedWords[] {
  const byPictures = new Map<string, { sentences: string[]; pictures: Set<Conversion> }>();
  for (const sentence of new Set(all.flatMap(({ told }) => told))) {
    const pictures = all.filter(({ told }) => told.includes(sentence));
    if (pictures.length < Math.min(MANY, Math.max(2, all.length))) continue;
    const key = pictures.map(({ path }) => path).join('\0');
    const group = byPictures.get(key) ?? { sentences: [], pictures: new Set(pictures) };
    group.sentences.push(sentence);
    byPictures.set(key, group);
  }
  const groups = [...byPictures.values()].sort((x, y) => y.pictures.size - x.pictures.size);
  const first = groups[0]?.pictures.size === all.length ? 0 : 1;
  return groups.map((group, at) => ({ ...group, number: at + first || null }));
}
