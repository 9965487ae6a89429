// no-unit-test: test/cli/actions/check.test.ts and compare.test.ts run the built program
import { count } from '../rules/words';

/** What `--max-warnings` counts: warnings, and lines of the settings that say something in vain, which count as they do. */
export interface Counted {
  warnings: number;
  slips: number;
}

/** Whether there are more than are allowed; left out, any number is. */
export const tooMany = ({ warnings, slips }: Counted, maxWarnings = Number.POSITIVE_INFINITY): boolean =>
  warnings + slips > maxWarnings;

/** Says of too many how many there are. @param fresh only what is new was counted */
export function tooManyWords(
  { warnings, slips }: Counted,
  maxWarnings: number | undefined,
  { fresh = false }: { fresh?: boolean } = {},
): string {
  const told = [
    ...(warnings ? [count(warnings, fresh ? 'new warning' : 'warning')] : []),
    ...(slips
      ? [
          `${count(slips, 'line')} of the settings that ${slips === 1 ? 'says' : 'say'} something in vain${fresh ? ' now' : ''}`,
        ]
      : []),
  ];
  const are = warnings + slips === 1 ? 'is' : 'are';
  return `${told.join(' and ')} ${are} more than --max-warnings ${maxWarnings} allows.\n`;
}
