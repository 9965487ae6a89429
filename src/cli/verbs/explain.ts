// no-unit-test: declares options; test/cli runs the built program
import { Command } from 'commander';
import { formatOption } from '../options';

export function explainVerb(): Command {
  return new Command('explain')
    .description(
      'Explains a rule: what it means in print, what to do, when to ignore it. Without a name: lists them.',
    )
    .argument(
      '[rule]',
      'id of a rule, as reports and settings name it; or "encodings": which encoding to send to which process',
    )
    .addOption(formatOption())
    .action(async (rule: string | undefined, options: { format: 'text' | 'json' }) => {
      const { explain } = await import('../actions/explain');
      process.exitCode = await explain(rule, options.format);
    });
}
