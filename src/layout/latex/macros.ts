// no-unit-test: test/layout/latex/index.test.ts reads texts by it
import type { Group, Groups } from './groups';

export interface Definition {
  /** One letter an argument, see `PlacingMacro`. */
  arguments: string;
  body: Group;
}

const COMMANDS = new Set(['newcommand', 'renewcommand', 'providecommand', 'DeclareRobustCommand']);
const DOCUMENT_COMMANDS = /^(?:New|Renew|Provide|Declare)(?:Expandable)?DocumentCommand$/;
const NAME = /\s*\{?\s*\\([a-zA-Z@]+)\s*\}?/y;
const PARAMETERS = /(?:\s*#\d)*/y;
const MOST = 9;

/** The macro that a command at `at` (behind the name of the command) defines; null where it defines none. */
export function definitionAt(
  groups: Groups,
  command: string,
  at: number,
): (Definition & { name: string }) | null {
  const plain = COMMANDS.has(command);
  const document = DOCUMENT_COMMANDS.test(command);
  const primitive = command === 'def' || command === 'gdef';
  if (!plain && !document && !primitive) return null;
  const { text } = groups;
  NAME.lastIndex = text[at] === '*' ? at + 1 : at;
  const name = NAME.exec(text)?.[1];
  if (!name) return null;
  let next = NAME.lastIndex;
  let kinds = '';
  if (plain) {
    const count = groups.brackets(next);
    const preset = count && groups.brackets(count.to + 1);
    const many = count ? Number(text.slice(count.from, count.to)) || 0 : 0;
    kinds = 'm'.repeat(Math.min(many, MOST));
    if (preset) kinds = kinds.replace('m', 'o');
    next = (preset ?? count)?.to ?? next - 1;
    next++;
  } else if (document) {
    const specification = groups.braces(next);
    if (!specification) return null;
    kinds = text
      .slice(specification.from, specification.to)
      .replace(/\{[^{}]*\}/g, '')
      .replace(/[^mMoOs]/g, '')
      .toLowerCase();
    next = specification.to + 1;
  } else {
    PARAMETERS.lastIndex = next;
    const parameters = PARAMETERS.exec(text)?.[0] ?? '';
    kinds = 'm'.repeat(parameters.split('#').length - 1);
    next = PARAMETERS.lastIndex;
  }
  const body = groups.braces(next);
  return body && { name, arguments: kinds, body };
}
