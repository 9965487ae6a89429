import { count, list } from '../../rules/words';
import type { Comparison, NewlyWaived } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import { nameOf } from '../text/blocks';

/** Stands over the lines of it. */
export const WAIVED = 'Waived by this change';

/** `warning tint, error clipped`, each once. */
export const rulesOf = (waived: readonly Pick<Finding, 'severity' | 'rule'>[]): string =>
  [...new Set(waived.map(({ severity, rule }) => `${severity} ${rule}`))].join(', ');

/** So many lines, and so many pictures in one, are told. */
const LINES = 12;
const NAMED = 12;

/** `6 findings are waived by this change.`; nothing where none is. */
export const waivedWords = ({ waived }: Pick<Comparison, 'waived'>): string =>
  waived.length
    ? `${count(waived.length, 'finding')} ${waived.length === 1 ? 'is' : 'are'} waived by this change.`
    : '';

/** `p1.jpg and p2.jpg: warning low-resolution, because: small on purpose`, a line a rule and reason, and how many more there are. */
export function waivedLines({ waived }: Pick<Comparison, 'waived'>): string[] {
  const groups = new Map<string, NewlyWaived[]>();
  for (const each of waived) {
    const { rule, severity, reason } = each.finding;
    const key = JSON.stringify([severity, rule, reason.trim()]);
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  const all = [...groups.values()];
  const rest = all.slice(LINES).flat().length;
  return [...all.slice(0, LINES).map(line), ...(rest ? [`and ${count(rest, 'finding')} more`] : [])];
}

function line(group: readonly NewlyWaived[]): string {
  const [{ finding }] = group;
  const reason = finding.reason.trim();
  const names = group.map(({ path, page }) => (path === null ? 'the book' : nameOf(path, page)));
  const why = reason ? `because: ${reason}` : 'no reason is given';
  return `${list(names, NAMED)}: ${finding.severity} ${finding.rule}, ${why}`;
}
