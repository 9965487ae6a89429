// no-unit-test: declares options; test/cli runs the built program
import { Command } from 'commander';
import { formatOption } from '../options';

export function explainVerb(): Command {
  return new Command('explain')
    .description(
      'Explains a rule (what it means in print, what to do, when to ignore it), the settings, or the encodings. Without a name: lists the rules.',
    )
    .argument(
      '[rule]',
      'id of a rule, as reports and settings name it; or "settings": what evengrey.json can say; or "encodings": which encoding to send to which process',
    )
    .addOption(formatOption())
    .action(async (rule: string | undefined, options: { format: 'text' | 'json' }) => {
      const { explain } = await import('../actions/explain');
      process.exitCode = await explain(rule, options.format);
    });
}
