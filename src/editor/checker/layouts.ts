import { namesPicture } from '../../book/discovery/extensions';
import { matcher } from '../../book/discovery/globs';
import { type Resolved, type ResolvedLayout, resolvedIn } from '../../book/layouts';
import { existingFiles } from '../../book/layouts/existing';
import { Namesakes } from '../../book/layouts/namesakes';
import type { Settings } from '../../book/settings/settings';
import type { LayoutText, OpenText, Place, PlacedFinding, TextRange } from '../../shared/layout-places';

/** What is found because of the size at which a picture is placed: a line that says none has no part in it. */
const BY_SIZE = 'low-resolution';

/** The layouts of a book that was checked, and what was found on the pictures that they place. */
export class OpenLayouts {
  readonly #what: string;
  /** Pictures whose size lines state, and not the settings for all of them. */
  readonly #sized: ReadonlySet<string>;
  readonly #namesakes: Namesakes;

  /** `pictures`: all that there are; `findings`: on one of them. By paths relative to the root. */
  constructor(
    private readonly root: string,
    private readonly layouts: Resolved,
    private readonly settings: Settings,
    pictures: readonly string[],
    private readonly findings: (picture: string) => PlacedFinding[],
  ) {
    this.#namesakes = new Namesakes(pictures, placedIn(layouts));
    this.#what = whatIsPlaced(layouts);
    const isSet = matcher(settings.placements.map(({ picture }) => picture));
    this.#sized = new Set(
      layouts.sources.flatMap(({ placed }) =>
        placed.flatMap(({ reference, found }) =>
          found.kind === 'found' && reference.size && !isSet(found.path) ? found.path : [],
        ),
      ),
    );
  }

  texts(): LayoutText[] {
    return this.layouts.sources.map(source => ({ path: source.path, places: this.#placesIn(source) }));
  }

  /**
   * The places of one layout with another text; nothing where it is none. `changed`: the book is another by it, since
   * one text can say for others where pictures lie and how large they are.
   */
  async placesIn(
    { path, text }: OpenText,
    signal?: AbortSignal,
  ): Promise<{ places: Place[]; changed: boolean }> {
    const { sources, around, notRead } = this.layouts;
    const files = [...sources, ...around].map(source =>
      source.path === path ? { ...source, text } : source,
    );
    const existing = (asked: ReadonlySet<string>) => existingFiles(this.root, asked);
    const now = await resolvedIn({ files, notRead }, existing, this.settings, signal);
    const source = now.sources.find(source => source.path === path);
    return { places: source ? this.#placesIn(source) : [], changed: whatIsPlaced(now) !== this.#what };
  }

  #placesIn(source: ResolvedLayout): Place[] {
    const { text, placed } = source;
    return placed.flatMap(one => {
      const { reference, found } = one;
      if (found.kind === 'elsewhere') return [];
      // a path that is being written leads anywhere on its way
      if (found.kind === 'outside' && !namesPicture(reference.path)) return [];
      const picture = found.kind === 'outside' ? null : found.path;
      return {
        ...rangeOf(text.slice(reference.start, reference.end), reference),
        picture,
        isThere: found.kind !== 'missing',
        findings: picture === null ? [] : this.#findingsAt(picture, reference.size !== null),
        instead: this.#namesakes.of(source, one),
      };
    });
  }

  #findingsAt(picture: string, isSized: boolean): PlacedFinding[] {
    const all = this.findings(picture);
    return isSized || !this.#sized.has(picture) ? all : all.filter(({ rule }) => rule !== BY_SIZE);
  }
}

const placedIn = ({ sources }: Resolved): ReadonlySet<string> =>
  new Set(
    sources.flatMap(({ placed }) =>
      placed.flatMap(({ found }) => (found.kind === 'found' ? found.path : [])),
    ),
  );

/** All that a book depends on in its layouts: which pictures lie where, and how large they are. Not on which lines. */
const whatIsPlaced = ({ sources }: Resolved): string =>
  JSON.stringify(
    sources.map(({ path, placed }) => [path, placed.map(({ reference, found }) => [found, reference.size])]),
  );

/** Where a text stands whose line and column (from 1) are known. */
export function rangeOf(written: string, { line, column }: { line: number; column: number }): TextRange {
  const start = { line: line - 1, column: column - 1 };
  const lines = written.split(/\r\n?|\n/);
  const last = lines[lines.length - 1].length;
  const end = { line: start.line + lines.length - 1, column: lines.length > 1 ? last : start.column + last };
  return { start, end };
}
