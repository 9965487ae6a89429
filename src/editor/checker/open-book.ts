// no-unit-test: it joins parts that have their own tests; test/e2e/suites/ tests it as a process
import { FactsCache } from '../../book/cache/cache';
import { cacheFolder } from '../../book/cache/folder';
import { checkLaidOut } from '../../book/check';
import { doubtfulPapers } from '../../book/doubts';
import { type Arrangement, placesIn, spreadsOf } from '../../book/order';
import { outdatedNotices } from '../../book/outdated';
import type { Pool } from '../../book/pool';
import { loadSettings } from '../../book/settings/load';
import type { Problem } from '../../book/settings/problem';
import type { TextChange } from '../../book/waivers/add';
import { readWaivers } from '../../book/waivers/file';
import { overviewOf } from '../../report/overview';
import { dutiesOf } from '../../report/text/begin';
import { rules } from '../../rules';
import { gainOf } from '../../rules/judge';
import { type Recommend, type Recommendation, recommendations } from '../../rules/recommended';
import { activeRules } from '../../rules/settings';
import type { CheckAnswer, LocatedProblem, Progress, WaiveWish } from '../../shared/checker-protocol';
import type { BookReport, Finding, PictureReport } from '../../shared/finding';
import type { OpenText, Place } from '../../shared/layout-places';
import type { Overview } from '../../shared/overview';
import type { BookPlace } from '../../shared/sheet';
import { askedByBook, convertedBy } from './asked-by-book';
import { OpenLayouts } from './layouts';
import { recommendedFor } from './remedies';
import { entriesOf, findingsByPicture, fixOn, shown } from './shown';
import { textsOf } from './taken-back';
import { waiving, withWaivers } from './waived';

/** A book that the editor has open: its last report is kept for the previews, its cache for the next check. */
export class OpenBook {
  #cache: Promise<FactsCache> | undefined;
  #report: BookReport | undefined;
  #arrangement: Arrangement = { spreads: [], placements: new Map() };
  #recommend: Recommend | undefined;
  /** Null: there are none, since the settings cannot be used. */
  #layouts: OpenLayouts | null | undefined;

  /** `version`: what facts are made by. */
  constructor(
    readonly root: string,
    private readonly pool: Pool,
    private readonly version: Promise<string>,
  ) {}

  async check(
    open: readonly OpenText[],
    signal: AbortSignal,
    onProgress: (progress: Progress) => void,
  ): Promise<CheckAnswer> {
    const { root, pool } = this;
    const { settings, problems } = await loadSettings(root);
    if (!settings) {
      this.#report = undefined;
      this.#recommend = undefined;
      this.#layouts = null;
      return {
        ...{ pictures: [], entries: [], book: [], layouts: [], unplaced: null, outdated: [] },
        ...{ summary: null, attention: 0 },
        settings: problems.map(located),
        slips: [],
        waivers: { problems: [], notices: [] },
      };
    }
    const cache = await this.cache();
    const told = throttled(onProgress);
    try {
      const read = await readWaivers(root);
      const { report: judged, found } = await checkLaidOut({
        ...{ root, paths: [root], settings, waivers: read.waivers, pool, cache, signal, open: textsOf(open) },
        onProgress: (done, total) => told({ done, total }),
      });
      const { report, notices } = withWaivers(judged, read);
      this.#report = report;
      const paths = new Set(report.pictures.map(({ path }) => path));
      this.#arrangement = {
        spreads: spreadsOf(settings.spreads, paths),
        placements: found.placements,
      };
      this.#recommend = recommendations(report.pictures, gainOf(activeRules(rules, settings.rules)));
      const recommended = (picture: PictureReport) => recommendedFor(this.#known(picture)).to;
      const findings = findingsByPicture(report.pictures, recommended);
      const asked = askedByBook(report.findings, report.pictures, picture =>
        fixOn(picture, recommended(picture)),
      );
      const all = found.all.map(({ path }) => path);
      this.#layouts = new OpenLayouts(root, found.layouts, settings, all, picture => [
        ...(findings.get(picture) ?? []),
        ...(asked.get(picture) ?? []),
      ]);
      // of a picture that is not there those lines tell that place it
      const missing = new Set(found.missing.map(({ path }) => path));
      return {
        pictures: [...findings].flatMap(([path, findings]) => (missing.has(path) ? [] : { path, findings })),
        entries: entriesOf(report),
        book: report.findings.map(finding => ({
          ...shown(finding),
          convert: convertedBy(finding, report.pictures),
        })),
        layouts: this.#layouts.texts(),
        unplaced: found.unplaced,
        outdated: report.pictures.flatMap(picture =>
          outdatedNotices([picture]).map(told => ({ path: picture.path, told })),
        ),
        summary: report.summary,
        attention: dutiesOf(report).length,
        settings: [],
        slips: [...(report.slips ?? []), ...doubtfulPapers(settings)],
        waivers: { problems: read.problems.map(located), notices },
      };
    } finally {
      // also what was read of a check that was given up
      await cache.save();
    }
  }

  /** The last report; checks first where this process knows none yet. Null where the settings cannot be used. */
  async report(signal: AbortSignal): Promise<BookReport | null> {
    if (this.#layouts === undefined) await this.check([], signal, () => {});
    return this.#report ?? null;
  }

  /** The book on one screen; null where the settings cannot be used. */
  async overview(signal: AbortSignal): Promise<Overview | null> {
    const report = await this.report(signal);
    return report && overviewOf(report, this.#arrangement.spreads);
  }

  /** See the question `waive`. */
  async waive({ picture, rule, reason, text }: WaiveWish, signal: AbortSignal): Promise<TextChange[]> {
    const report = await this.report(signal);
    if (!report) throw new Error('The settings cannot be used, so there is nothing to waive.');
    return waiving(rule, picture, reason, report, text);
  }

  /** What was read of the book's pictures before. */
  cache(): Promise<FactsCache> {
    return (this.#cache ??= this.version.then(version => FactsCache.open(cacheFolder(), this.root, version)));
  }

  /** The first picture at a path or in a folder of that path, and what is recommended for it; none before a check. */
  recommendedFor(path: string): { picture: PictureReport; recommendation: Recommendation | null } | null {
    const inside = path === '' ? '' : `${path}/`;
    const picture = this.#report?.pictures.find(each => each.path === path || each.path.startsWith(inside));
    return picture ? this.#known(picture) : null;
  }

  #known(picture: PictureReport): { picture: PictureReport; recommendation: Recommendation | null } {
    return { picture, recommendation: this.#recommend?.(picture, picture.targets[0] ?? null) ?? null };
  }

  /** See the question `places`. */
  async places(open: OpenText, signal: AbortSignal): Promise<{ places: Place[]; changed: boolean }> {
    // this process knows nothing of the book yet
    if (this.#layouts === undefined) return { places: [], changed: true };
    return this.#layouts ? this.#layouts.placesIn(open, signal) : { places: [], changed: false };
  }

  /** All pages of a picture in the last report; none if it is not in the book. */
  pages(path: string): PictureReport[] {
    return this.#report?.pictures.filter(picture => picture.path === path) ?? [];
  }

  /** The neighbours of a picture in the last report, in any part of the book. */
  placeOf(path: string): BookPlace | null {
    if (!this.#report) return null;
    const paths = this.#report.pictures.map(picture => picture.path);
    return placesIn(paths, this.#arrangement, () => null)(path);
  }

  /** The first pages of the pictures on the same spread, in its order; none where it is on none. */
  spreadOf(path: string): PictureReport[] {
    const spread = this.#arrangement.spreads.find(paths => paths.includes(path)) ?? [];
    return spread.flatMap(each => this.pages(each).slice(0, 1));
  }

  /** What the last report says of the book as a whole. */
  get findings(): readonly Finding[] {
    return this.#report?.findings ?? [];
  }
}

const located = ({ file, line, column, length, message, suggestion }: Problem): LocatedProblem => ({
  file,
  line,
  column,
  length,
  message,
  suggestion,
});

/** Ten messages a second are enough for a person. The last is always told. */
function throttled(tell: (progress: Progress) => void): (progress: Progress) => void {
  let last = 0;
  return progress => {
    const now = Date.now();
    if (now - last < 100 && progress.done < progress.total) return;
    last = now;
    tell(progress);
  };
}
