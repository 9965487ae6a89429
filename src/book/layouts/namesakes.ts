import path from 'node:path';
import { candidates, type LayoutKind, pathWritten, type Resolution, resolve, takes } from '../../layout';
import { compare } from '../discovery/discover';
import { namesPicture } from '../discovery/extensions';
import { nearPicture } from '../near-picture';
import type { ResolvedLayout } from '.';
import { waysTo } from './moved';

/** A person looks through so many. */
const MOST = 5;

/** A picture that a line could place in the stead of one that is not there. */
export interface Namesake {
  /** Relative to the root. */
  picture: string;
  /** What the line has to say then, exactly, where it names the picture now. */
  to: string;
}

type Line = ResolvedLayout['placed'][number];

/** The pictures of a book by their names: what a line may have meant whose own picture is not there. */
export class Namesakes {
  readonly #byName = new Map<string, string[]>();
  readonly #there: ReadonlySet<string>;
  /** Those that no layout places. */
  readonly #free: readonly string[];

  /** @param pictures all that there are, and those that layouts place; relative to the root */
  constructor(pictures: readonly string[], placed: ReadonlySet<string>) {
    this.#free = pictures.filter(picture => !placed.has(picture));
    this.#there = new Set(pictures.map(picture => picture.normalize('NFC')));
    for (const picture of pictures) {
      const name = nameOf(picture);
      const others = this.#byName.get(name);
      if (others) others.push(picture);
      else this.#byName.set(name, [picture]);
    }
  }

  /**
   * Those of the same name in other folders, or with another extension or other capitals, the nearest first: as far as
   * the layout's tool places them, and the line can name them so that it finds them. Where there is none, the one whose
   * name is near, as far as no layout places it.
   */
  of(source: ResolvedLayout, { reference, found }: Line): Namesake[] {
    if (found.kind !== 'missing') return [];
    const expected = found.path;
    return (this.#byName.get(nameOf(expected)) ?? this.#near(expected))
      .filter(picture => mayStandFor(source.kind, expected, picture))
      .map(picture => ({ picture, far: [steps(expected, picture), unlikeness(expected, picture)] }))
      .sort((x, y) => x.far[0] - y.far[0] || x.far[1] - y.far[1] || compare(x.picture, y.picture))
      .flatMap(({ picture }) => {
        const way = this.#wayTo(picture, source, { reference, found });
        return way === undefined ? [] : { picture, to: pathWritten(source.text, reference, way) };
      })
      .slice(0, MOST);
  }

  #near(expected: string): string[] {
    const near = nearPicture(expected, this.#free);
    return near === null ? [] : [near];
  }

  /** The path that leads to a picture by the fewest steps up; undefined: none does. */
  #wayTo(
    picture: string,
    { path: file, kind, mainFolders }: ResolvedLayout,
    { reference, found }: { reference: Line['reference']; found: Extract<Resolution, { kind: 'missing' }> },
  ): string | undefined {
    const isThere = (other: string) => this.#there.has(other.normalize('NFC'));
    const leadsThere = (written: string) => {
      const now = resolve({ ...reference, path: written, literal: null }, file, kind, isThere, {
        mainFolders,
      });
      return now.kind === 'found' && now.path.normalize('NFC') === picture.normalize('NFC');
    };
    const places = candidates(reference, file, kind, { mainFolders });
    return waysTo(picture, reference, places, found.base)
      .sort((x, y) => stepsUp(x) - stepsUp(y))
      .find(leadsThere);
  }
}

/** A picture's name without folder and extension; LaTeX leaves that out. */
function nameOf(picture: string): string {
  const name = path.posix.basename(picture);
  const bare = namesPicture(picture) ? name.slice(0, name.lastIndexOf('.')) : name;
  return folded(bare);
}

const folded = (text: string) => text.normalize('NFC').toLowerCase();

/** A line that names a format its usual tool does not place is taken at its word. */
const mayStandFor = (kind: LayoutKind, expected: string, picture: string): boolean =>
  takes(kind, picture) || extensionOf(picture) === extensionOf(expected);

const extensionOf = (picture: string) => path.posix.extname(picture).toLowerCase();

/** From folder to folder, up and down. */
const steps = (from: string, to: string): number =>
  path.posix.relative(path.posix.dirname(from), path.posix.dirname(to)).split('/').filter(Boolean).length;

const stepsUp = (written: string): number => written.split('/').filter(step => step === '..').length;

/** The name itself, then other capitals, then another extension. */
function unlikeness(expected: string, picture: string): number {
  const [one, other] = [expected, picture].map(each => path.posix.basename(each).normalize('NFC'));
  if (one === other) return 0;
  return folded(one) === folded(other) ? 1 : 2;
}
