import { apart, SEEN_APART, tintsOf } from '../../print/apart';
import { rules } from '../../rules';
import { kindOf } from '../../rules/recommended';
import type { Match } from '../../shared/comparison';
import type { BookPicture, Finding } from '../../shared/finding';
import type { Forecast } from '../../shared/forecast';
import { asksMost, spares } from '../revisions/claims';
import { middlesOf } from './middle';
import { storedApart } from './stored-apart';

/** From this probability on that a difference is seen, nobody says that a picture matches. Own choice. */
const LIKELY = 0.5;

/** The rule that says it of a picture by itself, whatever the others are. */
const REFUSED = 'encoding-not-accepted';

/** What goes by the header alone says nothing of how a picture prints. */
const comparing: ReadonlySet<string> = new Set(
  rules
    .filter(rule => rule.compares && rule.scope !== 'book' && rule.needs !== 'header')
    .map(rule => rule.id),
);

/** Whether a finding says that a picture prints otherwise than its neighbours. */
export const deniesMatch = ({ rule, severity }: Pick<Finding, 'rule' | 'severity'>): boolean =>
  comparing.has(rule) && severity !== 'note';

/**
 * Says whether a picture will print like the rest of its part and intent. That it does not is said by the rules that
 * compare pictures, and of one that the print house refuses by that, where it is stored otherwise than the others: they leave
 * it out. By nothing else, so that a comparison never says otherwise than a check. Where no rule speaks and the picture is
 * likely to be seen apart from the others all the same, the question stays open; where a rule asks the others to be stored as it
 * is, nothing is wrong with it, and nothing matches yet; nor where it asks most of them for a change, and it is one of these. A waived finding fails nothing, and makes no
 * match either. `book`: all pictures as they are now; null: the others were not looked at.
 */
export function matcherOf(
  book: readonly BookPicture[] | null,
): (picture: BookPicture, claims: readonly Finding[], waived?: readonly Finding[]) => Match[] {
  const middleFor = book && middlesOf(book);
  const othersOf = book && storedApart(book);
  const placeOf = (picture: BookPicture, target: string, forecast: Forecast | undefined): Place => {
    if (!middleFor || !forecast) return UNKNOWN;
    const middle = middleFor(picture, target);
    if (!middle) return { ...UNKNOWN, verdict: 'alone' };
    const away = apart(tintsOf(forecast), middle, SEEN_APART);
    if (!away) return UNKNOWN;
    // what equal files do too is the printer's matter
    const open = away.probability >= LIKELY && away.byPrinter < LIKELY;
    return {
      verdict: open ? 'unknown' : 'matches',
      distance: away.size,
      probability: away.probability,
    };
  };
  return (picture, claims, waived = []) => {
    if (picture.replacedBy || isNoGrey(picture)) return [];
    const judged = (target: string | null, place: Place): Match => {
      const others = othersOf?.(picture, target);
      const isRefused = ({ rule }: Finding) => rule === REFUSED && others?.any && !others.alike;
      const rulesOf = (findings: readonly Finding[]) =>
        findings
          .filter(finding => deniesMatch(finding) || isRefused(finding))
          .filter(({ data }) => typeof data.target !== 'string' || data.target === target)
          .map(({ rule }) => rule);
      const saying = (verdict: Match['verdict']) => {
        const of = (some: readonly Finding[]) =>
          rulesOf(some.filter(finding => verdictBy(finding, picture.path) === verdict));
        const [standing, livedWith] = [of(claims), of(waived)];
        const rules = [...new Set([...standing, ...livedWith])];
        return { rules, waived: !standing.length && livedWith.length > 0 };
      };
      const [against, withMost, ofOthers] = [saying('differs'), saying('along'), saying('ahead')];
      const isOpen = place.verdict === 'unknown' && place.distance !== null;
      const said: Pick<Match, 'verdict' | 'rules' | 'waived'> = against.rules.length
        ? { verdict: 'differs', ...against }
        : withMost.rules.length
          ? { verdict: 'along', ...withMost }
          : ofOthers.rules.length && !isOpen
            ? { verdict: 'ahead', ...ofOthers }
            : { verdict: place.verdict, rules: [], waived: false };
      return {
        target,
        ...said,
        ...(said.verdict === 'differs' && others?.stored && { stored: others.stored }),
        distance: place.distance,
        probability: place.probability,
      };
    };
    if (!picture.targets.length) return [judged(null, UNKNOWN)];
    return picture.targets.map(({ name }, i) => judged(name, placeOf(picture, name, picture.forecasts[i])));
  };
}

/** What a finding by which pictures are compared says of a picture. */
function verdictBy(finding: Finding, path: string): Match['verdict'] {
  if (spares(finding, path)) return 'ahead';
  return asksMost(finding, path) ? 'along' : 'differs';
}

type Place = Pick<Match, 'verdict' | 'distance' | 'probability'>;
const UNKNOWN: Place = { verdict: 'unknown', distance: null, probability: null };

/** No rule compares it with greys. */
const isNoGrey = (picture: BookPicture): boolean =>
  picture.intent === 'colour' ||
  picture.intent === 'line' ||
  (kindOf(picture) === null && picture.facts.encoding !== 'unreadable');
