// no-unit-test: test/book/check.test.ts judges a book through it, test/book/revisions parts of one
import { judge } from '../rules';
import type { BookPicture, Finding, PictureReport } from '../shared/finding';
import type { PictureFacts } from '../shared/picture';
import { forecastAll } from './forecasts';
import type { Placement } from './layouts';
import { largestPlaced } from './layouts/placed-size';
import { refusalOf } from './layouts/refusals';
import { positionsIn, spreadsOf } from './order';
import { bookPictures, standings } from './pictures';
import { markReplaced } from './replaced';
import type { Settings } from './settings/settings';
import { isWaivedBy, type Waiver } from './waivers/key';

/** A file that was read: its path in the book and what every page of it holds. */
export interface ReadFile {
  path: string;
  facts: readonly PictureFacts[];
  /** As a `BookPicture` has it. */
  changedOriginal?: string;
}

export interface JudgedBook {
  pictures: PictureReport[];
  /** About the book as a whole. */
  findings: Finding[];
  /** Pictures that face each other, by their paths, as `spreadsOf` has them; absent: none. */
  spreads?: readonly (readonly string[])[];
}

export interface JudgeBookOptions {
  /** The book has more pictures, so nothing is said that depends on them. */
  partial?: boolean;
  /** Paths of those whose content is another than before, where that is known. */
  changed?: ReadonlySet<string>;
  /** Where layouts place pictures, by their path. */
  placements?: ReadonlyMap<string, readonly Placement[]>;
  /** What is waived of a picture stays a finding by itself, whatever others come to have it too. */
  waivers?: readonly Waiver[];
  signal?: AbortSignal;
}

/**
 * Forecasts and judges what was read of a book, sorted by path. Gives way to other work; rejects with the signal's
 * reason when cancelled.
 */
export async function judgeBook(
  files: readonly ReadFile[],
  settings: Settings,
  { partial = false, changed, placements = new Map(), waivers = [], signal }: JudgeBookOptions = {},
): Promise<JudgedBook> {
  const standing = standings(settings);
  const pictures = files.flatMap(({ path, facts, changedOriginal }) =>
    bookPictures(path, facts, standing(path)).map(picture => ({
      ...picture,
      ...(changedOriginal && { changedOriginal }),
    })),
  );
  for (const picture of pictures) place(picture, placements.get(picture.path) ?? []);
  markReplaced(pictures);
  await forecastAll(pictures, signal);
  const { targets, rules } = settings;
  const paths = files.map(({ path }) => path);
  const spreads = spreadsOf(settings.spreads, paths);
  const positions = positionsIn(paths, { spreads, placements });
  for (const picture of pictures) picture.position = positions.get(picture.path) ?? null;
  const isWaived = isWaivedBy(waivers, { pictures });
  const findings = judge({ pictures, targets, ruleSettings: rules, spreads, partial, changed, isWaived });
  return {
    pictures: pictures.map((picture, at) => ({ ...picture, findings: findings.pictures[at] })),
    findings: findings.book,
    spreads,
  };
}

/** A size in the settings goes before those of layouts. */
function place(picture: BookPicture, placements: readonly Placement[]): void {
  if (!placements.length) return;
  picture.placedAt = placements.map(({ file, line, column }) => ({ file, line, column }));
  const refusals = picture.placedAt.flatMap(at => refusalOf(at, picture.path) ?? []);
  if (refusals.length) picture.refusals = refusals;
  const sizes = placements.flatMap(({ size }) => size ?? []);
  picture.placed ??= largestPlaced(sizes, picture.facts);
}
