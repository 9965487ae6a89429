// no-unit-test: declares options; test/cli runs the built program
import { Command, Option } from 'commander';
import type { ShardNumber } from '../../book/shards/shard';
import { type CheckFormat, checkFormats } from '../../report/formats';
import {
  conditionHelp,
  conditionOptions,
  formatOption,
  outputOption,
  shardNumber,
  wholeFrom,
} from '../options';

export interface CheckVerbOptions {
  format: CheckFormat;
  output?: string;
  process?: string;
  paper?: string;
  light?: string;
  settings?: string;
  since?: string;
  staged?: boolean;
  shard?: ShardNumber;
  waivers?: string;
  waive?: boolean;
  showWaived?: boolean;
  /** Somebody named the format; it was not taken for granted. */
  formatAsked: boolean;
  whole?: boolean;
  maxWarnings?: number;
  jobs?: number;
  cache: boolean;
}

export function checkVerb(): Command {
  const verb = new Command('check')
    .description(
      'Checks a book, or named pictures of it: how they are stored, how they may print, what is uneven.',
    )
    .argument('[paths...]', 'folders or pictures; left out: the folder you are in')
    .addOption(formatOption(checkFormats))
    .addOption(outputOption());
  const kept = 'left out: as the settings say';
  for (const option of conditionOptions({ process: kept, paper: kept, light: kept })) verb.addOption(option);
  return verb
    .addOption(new Option('--settings <file>', "another settings file than the book's own evengrey.json"))
    .addOption(
      new Option(
        '--since <revision>',
        'only pictures that changed since; what happened on its own branch does not count',
      ).conflicts('staged'),
    )
    .addOption(new Option('--staged', 'only pictures that a commit would change, as they are staged'))
    .addOption(
      new Option(
        '--whole',
        'with --since, --staged or named pictures: read the others too, where no check of them is remembered',
      ),
    )
    .addOption(
      new Option('--waivers <file>', "another file of waivers than the book's own .evengrey-waivers.json"),
    )
    .addOption(
      new Option(
        '--waive',
        'write every error and warning into the waivers and take out what is stale: nothing fails until something changes',
      ),
    )
    .addOption(new Option('--show-waived', 'tell the waived findings too'))
    .addOption(
      new Option(
        '--shard <i/n>',
        'read only part i of n parts of the book, for "evengrey merge"; judges nothing and fails nothing',
      )
        .argParser(shardNumber)
        .conflicts(['since', 'staged', 'maxWarnings', 'waive', 'showWaived']),
    )
    .addOption(
      new Option(
        '--max-warnings <n>',
        'fail with more warnings than this; left out: warnings never fail',
      ).argParser(wholeFrom(0)),
    )
    .addOption(new Option('--jobs <n>', 'pictures read at a time').argParser(wholeFrom(1)))
    .addOption(new Option('--no-cache', 'read every picture again'))
    .addHelpText(
      'after',
      `
Formats: text for people, json for programs, html a page with the pictures, to
look at and to print; markdown for a comment in a review; sarif, junit and
github for services of continuous integration.
The book is the folder of the nearest evengrey.json above the named paths, else the folder they have in common.
Examples:
  evengrey check my-book
  evengrey check my-book --process silver-halide --format json --output report.json
"evengrey explain settings" tells what evengrey.json can say.
Named pictures are compared with the others of their book where an earlier check remembers all of them.
A named path without a picture of the book ends with code 2.`,
    )
    .addHelpText('after', conditionHelp)
    .action(async (paths: string[], options: Omit<CheckVerbOptions, 'formatAsked'>, command: Command) => {
      const { check } = await import('../actions/check');
      const formatAsked = command.getOptionValueSource('format') === 'cli';
      process.exitCode = await check(paths, { ...options, formatAsked });
    });
}
