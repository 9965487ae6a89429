// no-unit-test: test/report/github/index.test.ts and test/report/compare/github.test.ts read what it writes
import type { Finding, Severity } from '../../shared/finding';
import { blankAt, type Mended } from '../blank-at';
import type { Place } from '../place';
import { nameOf } from '../text/blocks';
import { safe } from '../text/style';
import type { Trouble } from '../trouble';
import { command } from './command';

const commands: Record<Severity, string> = { error: 'error', warning: 'warning', note: 'notice' };

/**
 * A finding beside its file, beside the line that places it where there is no such file, or beside the settings where it is
 * about the book. A log shows a command's words alone, so they
 * begin with the picture's name.
 */
export function annotation(
  { rule, severity, message }: Finding,
  picture: (Mended & { path: string; facts: { page: number } }) | null,
  place: Place,
): string {
  const blank = picture && blankAt(picture);
  const file = picture ? place.folder + (blank?.file ?? picture.path) : place.settings;
  const name = picture ? `${safe(nameOf(picture.path, picture.facts.page))}: ` : '';
  return command(
    commands[severity],
    { file, line: file === null ? null : (blank?.line ?? 1), title: rule },
    name + safe(message),
  );
}

/** What is no finding on a picture, at its line of a text where it has one. */
export const onLine = (name: 'error' | 'warning', words: string, at: Trouble['at']): string =>
  command(name, { file: at?.file ?? null, line: at?.line ?? null, title: 'Evengrey' }, safe(words));

/** What is to be known of the whole, shown apart from findings. */
export const remark = (words: string): string => command('notice', { title: 'Evengrey' }, safe(words));
