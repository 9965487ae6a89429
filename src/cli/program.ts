// no-unit-test: test/cli/usage.test.ts runs the built program
import { Command } from 'commander';
import { version } from '../../package.json';
import { checkVerb } from './verbs/check';
import { compareVerb } from './verbs/compare';
import { convertVerb } from './verbs/convert';
import { demoVerb } from './verbs/demo';
import { explainVerb } from './verbs/explain';
import { forecastVerb } from './verbs/forecast';
import { mergeVerb } from './verbs/merge';

/** The command line. Verbs load what they need only when they are run, so that help and slips are told at once. */
export function program(): Command {
  const evengrey = new Command('evengrey')
    .description(
      'Says how the black-and-white pictures of a photo book will print, and what will print unevenly, before it is ordered.',
    )
    .version(version)
    .helpCommand(false)
    .configureHelp({ showGlobalOptions: false })
    .addHelpText(
      'after',
      `
Exit codes: 0 nothing fails, 1 findings that fail, 2 usage, settings or a crash.
Results go to the standard output, progress to the standard error. NO_COLOR=1 turns colour off.
What was read of a picture is kept in your cache folder; EVENGREY_CACHE_DIR names another.`,
    );
  for (const verb of [
    checkVerb(),
    mergeVerb(),
    compareVerb(),
    forecastVerb(),
    convertVerb(),
    explainVerb(),
    demoVerb(),
  ])
    evengrey.addCommand(verb);
  for (const command of [evengrey, ...evengrey.commands]) tidy(command);
  return evengrey;
}

/** Everywhere the same manners: no exit behind our back, slips told in our words, with where to look. */
function tidy(command: Command): void {
  command.exitOverride();
  command.configureOutput({
    outputError: (text, write) =>
      write(
        text
          .replace(/^error: (.)/, (_, first) => `evengrey: ${first.toUpperCase()}`)
          .replace(/'([^']*)'/g, '"$1"')
          .replace(/\n\(Did you mean (one of )?(.*)\?\)/, (_, several, words) =>
            several ? `. Did you mean one of ${words}?` : `. Did you mean "${words}"?`,
          ),
      ),
  });
  const name = command.parent ? `evengrey ${command.name()}` : 'evengrey';
  command.showHelpAfterError(`"${name} --help" says what it takes.`);
}
