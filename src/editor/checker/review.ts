// no-unit-test: it joins parts that have their own tests; test/e2e/suites/review tests it as a process
import type { FactsCache } from '../../book/cache/cache';
import { compareRevisions } from '../../book/comparison/compare';
import { FOLDER } from '../../book/comparison/ends';
import { GitError } from '../../book/git/git';
import { mainLine } from '../../book/git/main-line';
import { openRepository } from '../../book/git/repository';
import { commitOf, mergeBase } from '../../book/git/revision';
import type { Pool } from '../../book/pool';
import { oidsAt, rastersOf } from '../../book/revisions/show';
import { RevisionSettingsError } from '../../book/revisions/side';
import { reviewedPicture, reviewOf } from '../../report/compare/review';
import type { CheckerAnswers, Progress } from '../../shared/checker-protocol';
import type { Comparison } from '../../shared/comparison';
import type { Raster } from '../../shared/reader-protocol';

type Asked = CheckerAnswers['review']['request'];

/** Compares what lies in books' folders with what git holds of them. The last comparison is kept, to be looked through. */
export class BookReviews {
  #last: { key: string; comparison: Comparison } | undefined;

  constructor(private readonly pool: Pick<Pool, 'factsOf' | 'pixels' | 'raster'>) {}

  /** @throws with words for the user where nothing can be compared; the signal's reason when cancelled */
  async review(
    asked: Asked,
    cache: FactsCache,
    how: { signal: AbortSignal; onProgress: (progress: Progress) => void },
  ): Promise<CheckerAnswers['review']['answer']> {
    const { root, since, branch, picture } = asked;
    const key = JSON.stringify([root, since, branch]);
    if (asked.fresh || this.#last?.key !== key) {
      this.#last = undefined;
      this.#last = { key, comparison: await this.#compared(asked, cache, how) };
    }
    const { comparison } = this.#last;
    return {
      review: reviewOf(comparison),
      picture: picture && reviewedPicture(comparison, picture.path, picture.page),
    };
  }

  /** A picture as a commit holds it, read straight from git. @throws with words for the user */
  async before(
    { root, commit, path, page, longEdge }: CheckerAnswers['before']['request'],
    signal: AbortSignal,
  ): Promise<Raster> {
    const repository = await openRepository(root);
    const oid = (await oidsAt(repository, commit, [path])).get(path);
    if (!oid) throw new Error(`"${path}" is not in that commit.`);
    const wish = { key: path, oid, path, page, edge: longEdge };
    const shown = (await rastersOf([wish], repository, { pool: this.pool, signal })).get(path)!;
    if ('trouble' in shown) throw new Error(shown.trouble);
    return shown;
  }

  async #compared(
    { root, since, branch }: Asked,
    cache: FactsCache,
    { signal, onProgress }: { signal: AbortSignal; onProgress: (progress: Progress) => void },
  ): Promise<Comparison> {
    try {
      const base = since === 'commit' ? 'HEAD' : await mainBranch(root, branch);
      const ofBranch = since === 'branch';
      const comparison = await compareRevisions({
        ...{ root, head: FOLDER, fromMergeBase: false, conditions: {}, whole: true },
        base: ofBranch ? await partedAt(root, base) : base,
        ...{ pool: this.pool, cache, signal },
        onProgress: (done, total) => onProgress({ done, total }),
      });
      const asked = ofBranch ? base : LAST;
      return { ...comparison, mergeBase: ofBranch, base: { ...comparison.base, asked } };
    } catch (error) {
      if (!(error instanceof RevisionSettingsError)) throw error;
      const problems = error.problems.map(({ file, line, message }) => `${file}, line ${line}: ${message}`);
      throw new Error(
        `The settings ${error.which} have problems, so nothing was compared. ${problems.join(' ')}`,
      );
    } finally {
      await cache.save();
    }
  }
}

const LAST = 'the last commit';

async function mainBranch(root: string, named: string | null): Promise<string> {
  const repository = await openRepository(root);
  // without a commit there is no branch either, and that is what to say
  await commitOf(repository, 'HEAD');
  if (named !== null) {
    await commitOf(repository, named);
    return named;
  }
  const found = await mainLine(repository);
  if (found !== null) return found;
  throw new GitError(
    'Which branch the others start from is not known here: the clone does not say it, and none is called main, master or trunk. Name it in the setting "evengrey.compareWith", or fetch it.',
  );
}

async function partedAt(root: string, branch: string): Promise<string> {
  const repository = await openRepository(root);
  const [base, head] = await Promise.all([commitOf(repository, branch), commitOf(repository, 'HEAD')]);
  return mergeBase(repository, base, head, 'Or compare with the last commit alone.');
}
