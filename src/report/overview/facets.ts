// no-unit-test: test/report/overview/index.test.ts reads what it counts
import type { BookReport, Severity } from '../../shared/finding';
import type { Facet, FacetId, OverviewPicture } from '../../shared/overview';
import { everyFinding } from '../told';

const NAMES: Record<FacetId, string> = {
  doing: 'What to do',
  rule: 'Finding',
  encoding: 'Encoding',
  part: 'Part',
  target: 'Printed as',
};

/** In this order a person wants to know; what nobody has is left out, but for these. */
const DOINGS = ['send', 'fix', 'ask', 'leave'];
const ALWAYS = new Set(['send', 'fix', 'ask']);

/**
 * How many pictures have what, most first; findings the worst first, since that is where one begins. Parts and targets
 * only where there are several.
 */
export function facetsOf(
  pictures: readonly OverviewPicture[],
  report: BookReport,
  nameOf: Record<FacetId, (id: string) => string>,
): Facet[] {
  const severities = new Map<string, Severity>();
  // the worst comes first and stays
  for (const { finding } of everyFinding(report))
    if (!severities.has(finding.rule)) severities.set(finding.rule, finding.severity);
  const ruleOrder = [...severities.keys()];

  const facet = (id: FacetId, order?: readonly string[]): Facet => {
    const counts = new Map<string, number>(order?.map(value => [value, 0]));
    for (const { has } of pictures)
      for (const value of has[id]) counts.set(value, (counts.get(value) ?? 0) + 1);
    const values = [...counts].map(([value, count]) => ({
      id: value,
      name: nameOf[id](value),
      count,
      severity: (id === 'rule' && severities.get(value)) || null,
    }));
    if (!order) values.sort((x, y) => y.count - x.count || (x.id < y.id ? -1 : 1));
    return { id, name: NAMES[id], values: values.filter(({ count, id }) => count || ALWAYS.has(id)) };
  };

  const several = (id: FacetId) => {
    const found = facet(id);
    return found.values.length > 1 ? [found] : [];
  };
  return [
    facet('doing', DOINGS),
    facet('rule', ruleOrder),
    facet('encoding'),
    ...several('part'),
    ...several('target'),
  ];
}
