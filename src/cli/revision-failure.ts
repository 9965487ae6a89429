// no-unit-test: test/cli/actions/compare.test.ts and since.test.ts run the built program where there are no revisions
import { GitError } from '../book/revisions/git';
import { RevisionSettingsError } from '../book/revisions/side';
import { describeProblem } from '../book/settings/problem';
import { Failure } from './failure';

/** What git, or the settings of a revision, stood against, in words; any other error as it is. */
export function revisionFailure(error: unknown, root: string, done: string): unknown {
  if (error instanceof GitError) return new Failure(error.message);
  if (!(error instanceof RevisionSettingsError)) return error;
  const lines = error.problems.map(problem => describeProblem(problem, root, process.cwd()));
  return new Failure(
    `The settings that git holds have problems, so nothing was ${done}.\n${lines.join('\n')}`,
    { problems: error.problems },
  );
}
