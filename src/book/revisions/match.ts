import { apart, middleOf, SEEN_APART, type Tints, tintsOf } from '../../print/apart';
import { rules } from '../../rules';
import type { Match } from '../../shared/comparison';
import type { BookPicture, Finding } from '../../shared/finding';

/** From this probability on that a difference is seen, a picture does not match. Own choice. */
const LIKELY = 0.5;

const comparing: ReadonlySet<string> = new Set(
  rules.filter(rule => rule.compares && rule.scope !== 'book').map(rule => rule.id),
);

/** Whether a finding says that a picture prints otherwise than its neighbours. */
export const deniesMatch = ({ rule, severity }: Finding): boolean =>
  comparing.has(rule) && severity !== 'note';

/**
 * Says whether a picture will print like the rest of its part and intent: by the rules that compare pictures, and by its
 * distance from the middle of those that did not change, else of all others. A waived finding fails nothing, and makes no
 * match either. `others` null: they were not looked at.
 */
export function matcherOf(
  others: { unchanged: readonly BookPicture[]; all: readonly BookPicture[] } | null,
): (picture: BookPicture, claims: readonly Finding[], waived?: readonly Finding[]) => Match[] {
  const settled = new Map<string, Tints | null>();
  const middleFor = (picture: BookPicture, target: string): Tints | null => {
    const key = JSON.stringify([picture.part, picture.intent, target]);
    if (!settled.has(key)) settled.set(key, middleOf(tintsOn(others!.unchanged, picture, target)));
    return settled.get(key) ?? middleOf(tintsOn(others!.all, picture, target));
  };
  return (picture, claims, waived = []) => {
    if (picture.replacedBy) return [];
    if (picture.intent === 'colour' || picture.intent === 'line' || picture.facts.encoding === 'colour')
      return [];
    const against = (target: string | null): Pick<Match, 'rules' | 'waived'> => {
      const rulesOf = (findings: readonly Finding[]) =>
        findings
          .filter(deniesMatch)
          .filter(({ data }) => typeof data.target !== 'string' || data.target === target)
          .map(({ rule }) => rule);
      const [standing, livedWith] = [rulesOf(claims), rulesOf(waived)];
      return {
        rules: [...new Set([...standing, ...livedWith])],
        waived: !standing.length && livedWith.length > 0,
      };
    };
    const unforecast = (target: string | null): Match => {
      const told = against(target);
      const verdict = told.rules.length ? 'differs' : 'unknown';
      return { target, verdict, ...told, distance: null, probability: null };
    };
    if (!picture.targets.length) return [unforecast(null)];
    return picture.targets.map((target, i) => {
      const forecast = picture.forecasts[i];
      if (!others || !forecast) return unforecast(target.name);
      const middle = middleFor(picture, target.name);
      const told = against(target.name);
      const away = middle && apart(tintsOf(forecast), middle, SEEN_APART);
      if (!away)
        return {
          ...unforecast(target.name),
          verdict: told.rules.length ? 'differs' : middle ? 'unknown' : 'alone',
        };
      const differs = told.rules.length > 0 || away.probability >= LIKELY;
      return {
        target: target.name,
        verdict: differs ? 'differs' : 'matches',
        ...told,
        distance: away.size,
        probability: away.probability,
      };
    });
  };
}

function tintsOn(pictures: readonly BookPicture[], like: BookPicture, target: string): Tints[] {
  return pictures.flatMap(({ path, facts, part, intent, targets, forecasts }) => {
    const itself = path === like.path && facts.page === like.facts.page;
    if (itself || part !== like.part || intent !== like.intent) return [];
    return forecasts.filter((_, i) => targets[i].name === target).map(tintsOf);
  });
}
