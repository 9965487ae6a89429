// no-unit-test: it joins parts that have their own tests; test/e2e/suites/ tests it as a process
import { FactsCache } from '../../book/cache/cache';
import { cacheFolder } from '../../book/cache/folder';
import { checkBook } from '../../book/check';
import type { Pool } from '../../book/pool';
import { loadSettings } from '../../book/settings/load';
import type { Problem } from '../../book/settings/problem';
import type { Settings } from '../../book/settings/settings';
import { rules } from '../../rules';
import { type Recommend, type Recommendation, recommendations } from '../../rules/recommended';
import { activeRules } from '../../rules/settings';
import { basisWords } from '../../rules/targets';
import type { CheckAnswer, LocatedProblem, Progress } from '../../shared/checker-protocol';
import type { BookReport, Finding, PictureReport } from '../../shared/finding';
import type { Basis } from '../../shared/forecast';
import type { ShownFinding } from '../../shared/sheet';

/** A book that the editor has open: its last report is kept for the previews, its cache for the next check. */
export class OpenBook {
  #cache: Promise<FactsCache> | undefined;
  #report: BookReport | undefined;
  #recommend: Recommend | undefined;

  /** `version`: what facts are made by. */
  constructor(
    readonly root: string,
    private readonly pool: Pool,
    private readonly version: Promise<string>,
  ) {}

  async check(signal: AbortSignal, onProgress: (progress: Progress) => void): Promise<CheckAnswer> {
    const { root, pool } = this;
    const { settings, problems } = await loadSettings(root);
    if (!settings) {
      this.#report = undefined;
      this.#recommend = undefined;
      return { pictures: [], book: [], summary: null, settings: problems.map(located) };
    }
    const cache = await this.cache();
    const told = throttled(onProgress);
    try {
      const report = await checkBook({
        ...{ root, paths: [root], settings, pool, cache, signal },
        onProgress: (done, total) => told({ done, total }),
      });
      this.#report = report;
      this.#recommend = recommendations(report.pictures, gainOf(settings));
      return answerOf(report);
    } finally {
      // also what was read of a check that was given up
      await cache.save();
    }
  }

  /** What was read of the book's pictures before. */
  cache(): Promise<FactsCache> {
    return (this.#cache ??= this.version.then(version => FactsCache.open(cacheFolder(), this.root, version)));
  }

  /** The first picture at a path or in a folder of that path, and what is recommended for it; none before a check. */
  recommendedFor(path: string): { picture: PictureReport; recommendation: Recommendation | null } | null {
    const inside = path === '' ? '' : `${path}/`;
    const picture = this.#report?.pictures.find(each => each.path === path || each.path.startsWith(inside));
    if (!picture || !this.#recommend) return null;
    return { picture, recommendation: this.#recommend(picture, picture.targets[0] ?? null) };
  }

  /** All pages of a picture in the last report; none if it is not in the book. */
  pages(path: string): PictureReport[] {
    return this.#report?.pictures.filter(picture => picture.path === path) ?? [];
  }

  /** What the last report says of the book as a whole. */
  get findings(): readonly Finding[] {
    return this.#report?.findings ?? [];
  }
}

/** As the findings recommend: only a gain that `likely-tint` would tell speaks against what most pictures are stored in. */
function gainOf(settings: Settings): number {
  const gain = activeRules(rules, settings.rules).find(({ rule }) => rule.id === 'likely-tint')?.options.gain;
  return typeof gain === 'number' ? gain : Number.POSITIVE_INFINITY;
}

function answerOf({ pictures, findings, summary }: BookReport): CheckAnswer {
  const byPath = new Map<string, ShownFinding[]>();
  for (const { path, facts, findings } of pictures) {
    const onPage = findings
      .map(shown)
      .map(f => (facts.page > 1 ? { ...f, message: `Page ${facts.page}: ${f.message}` } : f));
    if (onPage.length) byPath.set(path, [...(byPath.get(path) ?? []), ...onPage]);
  }
  return {
    pictures: [...byPath].map(([path, findings]) => ({ path, findings })),
    book: findings.map(shown),
    summary,
    settings: [],
  };
}

/** A finding is read alone in the editor: what its forecast rests on, told in a report's head, stands behind it. */
function shown({ rule, severity, message, data }: Finding): ShownFinding {
  if (typeof data.basis !== 'string') return { rule, severity, message };
  const words = basisWords(data.basis as Basis);
  return { rule, severity, message: `${message} ${words[0].toUpperCase()}${words.slice(1)}.` };
}

const located = ({ file, line, column, length, message }: Problem): LocatedProblem => ({
  file,
  line,
  column,
  length,
  message,
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
