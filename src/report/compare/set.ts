import { deniesMatch } from '../../book/comparison/match';
import { asksMost } from '../../book/revisions/claims';
import { list } from '../../rules/words';
import type { Comparison, Match, OtherChange, PageChange } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import { nameOf } from '../text/blocks';
import { adviceLines } from './advice';
import { blankPlaces, isMissing } from './blank';
import { whoseChanged } from './settings';
import { isLoud } from './verdict';

/** So many pictures are named in one sentence. */
const NAMED = 5;

/** Which places stay blank, whether the new and changed pictures match the book, and what others are to become for it: the verdict on the set. */
export const setVerdict = (comparison: Comparison): string =>
  [blankPlaces(comparison), matching(comparison), ...adviceLines(comparison)].filter(Boolean).join(' ');

function matching(comparison: Comparison): string {
  const { scope, changes } = comparison;
  const judged = changes.flatMap(change =>
    change.pages
      .filter(({ matches, after }) => matches.length && !isMissing(after))
      .map(page => ({ name: nameOf(change.path, page.page), page, verdict: worst(page.matches) })),
  );
  if (!judged.length) return othersNow(comparison);
  if (scope === 'changes') return notJudged(comparison);
  const of = (verdict: Match['verdict']) => judged.filter(each => each.verdict === verdict);
  const names = (some: readonly { name: string }[]) =>
    list(
      some.map(({ name }) => name),
      NAMED,
    );
  const [matches, alone] = [of('matches'), of('alone')];
  const alsoRefused = matches.filter(({ page }) => isRefused(page));
  const flawed = matches.filter(each => !alsoRefused.includes(each) && flawsOf(each.page).length);
  const sound = matches.filter(each => !alsoRefused.includes(each) && !flawed.includes(each));
  const apart = of('differs');
  const waived = apart.filter(({ page }) => livedWith(page));
  const standing = apart.filter(each => !waived.includes(each));
  const before = standing.filter(({ page }) => wasSo(page));
  const differs = standing.filter(each => !before.includes(each));
  const deny = (some: typeof judged, more = '') =>
    [...byStorage(some)]
      .map(([words, alike]) => {
        const [not, are] = alike.length === 1 ? ['does', 'it is'] : ['do', 'they are'];
        const why = words && `: ${are} ${words}`;
        return `${names(alike)} ${not} not match the rest of the book${more}${why}.`;
      })
      .join(' ');
  const [along, ahead] = [of('along'), of('ahead')];
  const unknown = of('unknown');
  const sentences = [
    ...open(unknown.filter(({ page }) => page.after?.facts.unreadable)),
    deny(differs),
    deny(before, ', as before'),
    deny(
      waived,
      `; ${waived.length === 1 ? 'the finding that says so is' : 'the findings that say so are'} waived`,
    ),
    along.length
      ? `${names(along)} ${along.length === 1 ? 'is' : 'are'} stored like most of the others, and to be converted with them.`
      : '',
    ahead.length
      ? `${names(ahead)} ${ahead.length === 1 ? 'is' : 'are'} stored as all are to be, and others are not yet.`
      : '',
    flawed.length
      ? `${names(flawed)} ${flawed.length === 1 ? 'matches' : 'match'} the rest of the book, and something else is new against ${flawed.length === 1 ? 'it' : 'them'}: ${list([...new Set(flawed.flatMap(({ page }) => flawsOf(page)))], NAMED)}.`
      : '',
    sound.length === judged.length && sound.length > 1
      ? `All ${sound.length} match the rest of the book.`
      : sound.length
        ? `${names(sound)} ${sound.length === 1 ? 'matches' : 'match'} the rest of the book.`
        : '',
    alsoRefused.length
      ? `${names(alsoRefused)} ${alsoRefused.length === 1 ? 'is' : 'are'} stored like the rest of the book, and the print house may refuse that.`
      : '',
    ...open(unknown.filter(({ page }) => !page.after?.facts.unreadable)),
    alone.length
      ? `${names(alone)} ${alone.length === 1 ? 'has' : 'have'} no others of the same part and intent to match.`
      : '',
    othersNow(comparison),
  ];
  return sentences.filter(Boolean).join(' ');

  /** By how they stand out, in words; '' where they are stored like the others, or on the same side of a split book. */
  function byStorage(some: typeof judged): Map<string, typeof judged> {
    const alike = new Map<string, typeof judged>();
    for (const each of some) {
      const stored = each.page.matches.find(match => match.verdict === 'differs' && match.stored)?.stored;
      const words = stored ? `stored as ${stored.as}, and most of the others as ${stored.others}` : '';
      alike.set(words, [...(alike.get(words) ?? []), each]);
    }
    return alike;
  }

  /** Why it is not known, and the way to know it. */
  function open(unknown: typeof judged): string[] {
    const why = ({ page: { after, matches } }: (typeof judged)[number]) => {
      if (matches.some(({ verdict, distance }) => verdict === 'unknown' && distance !== null)) return 'seen';
      if (after?.facts.unreadable) return after.facts.unreadable.reason === 'not-fetched' ? 'fetch' : 'read';
      return after?.targets.length ? 'none' : 'process';
    };
    const sentence = (reason: ReturnType<typeof why>, words: (names: string, one: boolean) => string) => {
      const some = unknown.filter(each => why(each) === reason);
      return some.length ? words(names(some), some.length === 1) : '';
    };
    const nothing = (one: boolean) =>
      `so nothing is known of how ${one ? 'it prints' : 'they print'} beside the others`;
    return [
      sentence(
        'read',
        (some, one) =>
          `${some} cannot be read, ${nothing(one)}: copy or export ${one ? 'it' : 'them'} again.`,
      ),
      sentence(
        'fetch',
        (some, one) =>
          `${some} ${one ? 'was' : 'were'} not fetched, ${nothing(one)}: run "git lfs fetch --all" and compare again ("git lfs pull" fetches no more than what is checked out, and a comparison needs both versions).`,
      ),
      sentence(
        'process',
        some =>
          `Nobody said where the book will be printed, so whether ${some} will print like the others is not forecast: name a "process" in evengrey.json.`,
      ),
      sentence(
        'seen',
        (some, one) =>
          `Whether ${some} ${one ? 'matches' : 'match'} the rest of the book stays open: by the forecast ${one ? 'it is' : 'they are'} likely to be seen apart from the others, but no rule denies the match, since too few are stored alike to say which is odd, or since the settings ask for less. Look at ${one ? 'it' : 'them'} beside the others in a test print.`,
      ),
      sentence('none', (some, one) => `Of ${some} nothing can be forecast, ${nothing(one)}.`),
    ];
  }
}

function notJudged({ unread }: Comparison): string {
  const others =
    unread === 1
      ? 'the other picture did not change and was'
      : `the other ${unread} pictures did not change and were`;
  return `Whether they match the book was not judged: ${others} not looked at. Run "evengrey check" once, which remembers them, or compare with --whole. Until then findings leave open what to save a picture as, where there is a choice.`;
}

/** What was one of many may be one of few now, and the settings may judge otherwise what is as it was. */
function othersNow(comparison: Comparison): string {
  const apart = comparison.others.filter(({ path, findings }) =>
    findings.new.some(finding => deniesMatch(finding) && !asksMost(finding, path)),
  );
  const alike = new Map<string, OtherChange[]>();
  for (const other of apart) {
    const why = beforeToo(other) ?? ` ${sinceWhat(comparison)}`;
    alike.set(why, [...(alike.get(why) ?? []), other]);
  }
  return [...alike]
    .map(([why, some]) => {
      const names = list(
        some.map(({ path, page }) => nameOf(path, page)),
        NAMED,
      );
      const does = some.length === 1 ? 'itself, does' : 'themselves, do';
      return `${names}, unchanged ${does} not match the rest of the book${why}.`;
    })
    .join(' ');
}

/** That it did not match before either, and what says so now; null where it did, or nobody said that it did not. */
function beforeToo({ findings, lapsed = [] }: OtherChange): string | null {
  const rules = [...new Set(findings.new.filter(deniesMatch).map(({ rule }) => rule))];
  if (rules.every(rule => lapsed.includes(rule)))
    return ', as before; what says so was waived, and is not any more';
  if (![...findings.unchanged, ...findings.ended].some(deniesMatch)) return null;
  return `, as before; new is that ${list(rules)} ${rules.length === 1 ? 'says' : 'say'} so`;
}

/** No surer than what is known: where pictures changed and what judges them too, either may have done it. */
function sinceWhat(comparison: Comparison): string {
  const whose = whoseChanged(comparison);
  if (!whose.length) return 'any more';
  return comparison.changes.length ? 'as it is now' : `by the ${list(whose)} as they are now`;
}

/** It did not match before either, by the same rules. */
function wasSo({ before, findings, matches }: PageChange): boolean {
  const rules = new Set(matches.flatMap(match => match.rules));
  const says = (some: readonly Finding[]) => some.some(({ rule }) => rules.has(rule));
  return before !== null && says(findings.unchanged) && !says(findings.new);
}

/** Rules that find something new against it, which is another matter than the set. */
const flawsOf = ({ findings }: PageChange): string[] =>
  findings.new.filter(finding => isLoud(finding) && !deniesMatch(finding)).map(({ rule }) => rule);

const isRefused = ({ findings }: PageChange): boolean =>
  [...findings.new, ...findings.unchanged].some(({ rule }) => rule === 'encoding-not-accepted');

const livedWith = ({ matches }: PageChange): boolean =>
  matches.every(({ verdict, waived }) => verdict !== 'differs' || waived);

/** Over all targets, the one that matters. */
export function worst(matches: readonly Match[]): Match['verdict'] {
  const order: Match['verdict'][] = ['differs', 'unknown', 'along', 'ahead', 'matches', 'alone'];
  return order.find(verdict => matches.some(match => match.verdict === verdict)) ?? 'unknown';
}
