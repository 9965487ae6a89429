import type { PictureReport, PlacedAt } from '../../shared/finding';
import type { Place } from '../place';
import type { Trouble } from '../trouble';
import { relativeUri } from './uri';

/** What relative URIs are relative to: the name that services know for the root of a repository. */
export const BASE = '%SRCROOT%';

/** Nothing in a picture has a line; its first is where services show what concerns all of a file. */
const WHOLE = { startLine: 1, startColumn: 1, endLine: 1, endColumn: 1 };

/** The files that results point to, each once, in the order of the results. */
export class Artifacts {
  readonly list: object[] = [];
  private readonly places = new Map<string, number>();

  constructor(private readonly place: Place) {}

  /** A location in a picture, and on its page where the file has several. */
  picture({ path, facts }: PictureReport) {
    const hashes = facts.sha256 ? { hashes: { 'sha-256': facts.sha256 } } : {};
    const page = facts.page > 1 && { name: `page ${facts.page}`, kind: 'page' };
    return {
      physicalLocation: {
        artifactLocation: this.add(this.place.folder + path, hashes),
        region: WHOLE,
      },
      ...(page && { logicalLocations: [page] }),
    };
  }

  /** A place in a text. */
  text({ file, line, column }: NonNullable<Trouble['at']>) {
    return {
      physicalLocation: {
        artifactLocation: this.add(file, {}),
        region: { startLine: line, startColumn: column },
      },
    };
  }

  /** A line of a layout. */
  layout({ file, ...at }: PlacedAt) {
    return this.text({ file: this.place.folder + file, ...at });
  }

  /** The location of what concerns the whole book: its settings, or its folder where it has none. */
  book() {
    const { settings, folder } = this.place;
    return {
      physicalLocation: settings
        ? { artifactLocation: this.add(settings, {}), region: WHOLE }
        : { artifactLocation: this.add(folder || './', { roles: ['directory'] }) },
    };
  }

  private add(path: string, more: object) {
    const location = { uri: relativeUri(path), uriBaseId: BASE };
    const index = this.places.get(path) ?? this.list.push({ location, ...more }) - 1;
    this.places.set(path, index);
    return { ...location, index };
  }
}
