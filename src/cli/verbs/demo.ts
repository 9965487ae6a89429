// no-unit-test: declares options; test/cli runs the built program
import { Command } from 'commander';
import { formatOption } from '../options';

export function demoVerb(): Command {
  return new Command('demo')
    .description(
      'Makes a small invented book that shows every encoding and the common faults, and checks it.',
    )
    .argument('<folder>', 'a folder that is not there yet, or is empty')
    .addOption(formatOption())
    .action(async (folder: string, options: { format: 'text' | 'json' }) => {
      const { demo } = await import('../actions/demo');
      process.exitCode = await demo(folder, options.format);
    });
}
