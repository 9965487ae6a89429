// no-unit-test: test/report/github/index.test.ts and test/report/compare/github.test.ts read what it writes
import type { Finding, Severity } from '../../shared/finding';
import type { Place } from '../place';
import { nameOf } from '../text/blocks';
import { safe } from '../text/style';
import { command } from './command';

const commands: Record<Severity, string> = { error: 'error', warning: 'warning', note: 'notice' };

/**
 * A finding beside its file, or beside the settings where it is about the book. A log shows a command's words alone, so they
 * begin with the picture's name.
 */
export function annotation(
  { rule, severity, message }: Finding,
  picture: { path: string; facts: { page: number } } | null,
  place: Place,
): string {
  const file = picture ? place.folder + picture.path : place.settings;
  const name = picture ? `${safe(nameOf(picture.path, picture.facts.page))}: ` : '';
  return command(
    commands[severity],
    { file, line: file === null ? null : 1, title: rule },
    name + safe(message),
  );
}

/** What is to be known of the whole, shown apart from findings. */
export const remark = (words: string): string => command('notice', { title: 'Evengrey' }, safe(words));
