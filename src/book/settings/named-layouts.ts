// no-unit-test: test/book/settings/load.test.ts loads settings that name layouts
import { kindOf } from '../../layout';
import { isPattern, matcher } from '../discovery/globs';
import type { Problem } from './problem';
import type { RawSettings } from './settings';
import { suggest } from './suggest';
import type { Parsed } from './validate';
import type { SettingsFiles } from './within';

/** Layouts that are named and not there, or that nobody reads: without one of them another book would be judged. */
export async function layoutProblems(
  root: string,
  { layouts }: Pick<RawSettings, 'layouts'>,
  { within, layouts: layoutsIn }: SettingsFiles,
  problemAt: Parsed['problemAt'],
): Promise<Problem[]> {
  const problems: Problem[] = [];
  for (const [at, name] of [layouts ?? []].flat().entries()) {
    // one may match nothing today
    if (isPattern(name)) continue;
    const path = Array.isArray(layouts) ? ['layouts', at] : ['layouts'];
    const found = await within(root, root, name);
    if (found.ok) {
      if (kindOf(name) === null)
        problems.push(problemAt(path, `"${name}" is no layout that can be read. ${READ}`));
    } else if (found.why === 'missing') {
      const there = await layoutsIn(root);
      if (there.some(matcher([name]))) continue;
      const suggestion = suggest(name, there);
      const help = suggestion ? `Did you mean "${suggestion}"?` : 'Correct the name, or take it out.';
      problems.push(problemAt(path, `There is no layout "${name}". ${help}`, 'value', suggestion));
    } else if (!found.folder) problems.push(problemAt(path, found.message));
  }
  return problems;
}

const READ = 'Markdown, HTML, CSS, LaTeX, Typst and AsciiDoc are.';
