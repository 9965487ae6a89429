// no-unit-test: declares options; test/cli runs the built program
import { Command, Option } from 'commander';
import { type CheckFormat, checkFormats } from '../../report/formats';
import { formatOption, outputOption, wholeFrom } from '../options';

export interface MergeVerbOptions {
  format: CheckFormat;
  output?: string;
  maxWarnings?: number;
  showWaived?: boolean;
  book?: string;
  jobs?: number;
}

export function mergeVerb(): Command {
  return new Command('merge')
    .description(
      'Joins what "check --shard" wrote of all parts of a book: the report that one run would give.',
    )
    .argument('<reports...>', 'the reports of all shards, in any order')
    .addOption(formatOption(checkFormats))
    .addOption(outputOption())
    .addOption(
      new Option(
        '--max-warnings <n>',
        'fail with more warnings than this; left out: warnings never fail',
      ).argParser(wholeFrom(0)),
    )
    .addOption(new Option('--show-waived', 'tell the waived findings too'))
    .addOption(
      new Option('--book <folder>', 'the book, with "--format html": shards hold no pictures to show'),
    )
    .addOption(new Option('--jobs <n>', 'pictures read at a time for the page').argParser(wholeFrom(1)))
    .addHelpText(
      'after',
      `
Settings and conditions are those of the shards. A shard that is missing, doubled or of another check ends with code 2,
and so does one that saw another state of the book: a picture of another size, or with another content by git. Without
git a picture that was replaced by one of the same size to the byte is not noticed.
Examples:
  evengrey check my-book --shard 1/2 --output one.json
  evengrey check my-book --shard 2/2 --output two.json
  evengrey merge one.json two.json --format sarif --output report.sarif
  evengrey merge one.json two.json --format html --book my-book --output report.html`,
    )
    .action(async (reports: string[], options: MergeVerbOptions) => {
      const { merge } = await import('../actions/merge');
      process.exitCode = await merge(reports, options);
    });
}
