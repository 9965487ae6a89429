// no-unit-test: test/cli/actions/compare.test.ts and since.test.ts run the built program where there are no revisions
import { GitError } from '../book/git/git';
import { RevisionSettingsError, type Which } from '../book/revisions/side';
import { describeProblem } from '../book/settings/problem';
import { Failure } from './failure';

/** What git, or the settings of a revision, stood against, in words; any other error as it is. */
export function revisionFailure(error: unknown, root: string, done: string): unknown {
  if (error instanceof GitError) return new Failure(error.message);
  if (!(error instanceof RevisionSettingsError)) return error;
  const lines = error.problems.map(problem => describeProblem(problem, root, process.cwd()));
  const what = lines.length === 1 ? 'a problem' : `${lines.length} problems`;
  return new Failure(`${SETTINGS[error.which]} have ${what}, so nothing was ${done}.\n${lines.join('\n')}`, {
    problems: error.problems,
  });
}

/** Of which of the books that git holds: its lines are not always those of the folder. */
const SETTINGS: Record<Which, string> = {
  before: 'The settings before',
  after: 'The settings after',
  staged: 'The settings that are staged',
};
