// no-unit-test: declares options; test/cli runs the built program
import { Command, Option } from 'commander';
import { type CompareFormat, compareFormats } from '../../report/compare/formats';
import { conditionHelp, conditionOptions, formatOption, outputOption, wholeFrom } from '../options';

export interface CompareVerbOptions {
  format: CompareFormat;
  output?: string;
  book: string;
  process?: string;
  paper?: string;
  light?: string;
  maxWarnings?: number;
  mergeBase: boolean;
  whole?: boolean;
  jobs?: number;
  cache: boolean;
}

export function compareVerb(): Command {
  const verb = new Command('compare')
    .description(
      'Compares a book at two revisions of its git repository: what changed, how it will print now, whether it matches the rest.',
    )
    .argument('<base>', 'a revision: a branch, a tag, a commit')
    .argument('[head]', 'another; left out: the current commit')
    .addOption(new Option('--book <folder>', 'the book').default('.', 'the folder you are in'))
    .addOption(new Option('--no-merge-base', 'compare with the base itself, not with where the two parted'))
    .addOption(new Option('--whole', 'read the unchanged pictures too, where no check of them is remembered'))
    .addOption(formatOption(compareFormats))
    .addOption(outputOption());
  const kept = 'left out: as the settings of each revision say';
  for (const option of conditionOptions({ process: kept, paper: kept, light: kept })) verb.addOption(option);
  return verb
    .addOption(
      new Option(
        '--max-warnings <n>',
        'fail with more new warnings than this; left out: warnings never fail',
      ).argParser(wholeFrom(0)),
    )
    .addOption(new Option('--jobs <n>', 'pictures read at a time').argParser(wholeFrom(1)))
    .addOption(new Option('--no-cache', 'remember nothing, and read every changed picture again'))
    .addHelpText(
      'after',
      `
Pictures and settings are read straight from git; what lies in the folder now does not count.
Only pictures that changed are read, and all where the settings changed what they are judged by. What holds for the
whole book is judged where the others are remembered from a check, or with --whole: a gate needs it. New errors end
with code 1.
Examples:
  evengrey compare main --book my-book --whole
  evengrey compare HEAD~1 HEAD --book my-book --format markdown --output review.md`,
    )
    .addHelpText('after', conditionHelp)
    .action(async (base: string, head: string | undefined, options: CompareVerbOptions) => {
      const { compare } = await import('../actions/compare');
      process.exitCode = await compare(base, head ?? null, options);
    });
}
