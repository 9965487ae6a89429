import { deniesMatch } from '../../book/revisions/match';
import { list } from '../../rules/words';
import type { Comparison, Match, OtherChange, PageChange } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import { nameOf } from '../text/blocks';
import { blankPlaces, isMissing } from './blank';
import { regraded } from './regraded';

/** So many pictures are named in one sentence. */
const NAMED = 5;

/** Which places stay blank, and whether the new and changed pictures match the book: the verdict on the set. */
export const setVerdict = (comparison: Comparison): string =>
  [blankPlaces(comparison), matching(comparison)].filter(Boolean).join(' ');

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
  const sound = matches.filter(each => !alsoRefused.includes(each));
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
  const sentences = [
    deny(differs),
    deny(before, ', as before'),
    deny(
      waived,
      `; ${waived.length === 1 ? 'the finding that says so is' : 'the findings that say so are'} waived`,
    ),
    sound.length === judged.length && sound.length > 1
      ? `All ${sound.length} match the rest of the book.`
      : sound.length
        ? `${names(sound)} ${sound.length === 1 ? 'matches' : 'match'} the rest of the book.`
        : '',
    alsoRefused.length
      ? `${names(alsoRefused)} ${alsoRefused.length === 1 ? 'is' : 'are'} stored like the rest of the book, and the print house may refuse that.`
      : '',
    ...open(of('unknown')),
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
        'fetch',
        (some, one) =>
          `${some} ${one ? 'was' : 'were'} not fetched, ${nothing(one)}: run "git lfs fetch --all" and compare again ("git lfs pull" fetches no more than what is checked out, and a comparison needs both versions).`,
      ),
      sentence(
        'read',
        (some, one) =>
          `${some} cannot be read, ${nothing(one)}: copy or export ${one ? 'it' : 'them'} again.`,
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
function othersNow({ others, settings }: Comparison): string {
  const apart = others.filter(({ findings }) => findings.new.some(deniesMatch));
  const graded = new Map<string, OtherChange[]>();
  for (const other of apart) {
    const words = regraded(other.findings).find(({ now }) => deniesMatch(now))?.words ?? '';
    graded.set(words, [...(graded.get(words) ?? []), other]);
  }
  const why = settings.changes.length ? 'by the settings as they are now' : 'any more';
  return [...graded]
    .map(([words, some]) => {
      const names = list(
        some.map(({ path, page }) => nameOf(path, page)),
        NAMED,
      );
      const one = some.length === 1;
      const deny = `${names}, unchanged ${one ? 'itself, does' : 'themselves, do'} not match the rest of the book`;
      return words ? `${deny}, as before; that ${words}.` : `${deny} ${why}.`;
    })
    .join(' ');
}

/** It did not match before either, by the same rules. */
function wasSo({ before, findings, matches }: PageChange): boolean {
  const rules = new Set(matches.flatMap(match => match.rules));
  const says = (some: readonly Finding[]) => some.some(({ rule }) => rules.has(rule));
  return before !== null && says(findings.unchanged) && !says(findings.new);
}

const isRefused = ({ findings }: PageChange): boolean =>
  [...findings.new, ...findings.unchanged].some(({ rule }) => rule === 'encoding-not-accepted');

const livedWith = ({ matches }: PageChange): boolean =>
  matches.every(({ verdict, waived }) => verdict !== 'differs' || waived);

/** Over all targets, the one that matters. */
export function worst(matches: readonly Match[]): Match['verdict'] {
  const order: Match['verdict'][] = ['differs', 'unknown', 'matches', 'alone'];
  return order.find(verdict => matches.some(match => match.verdict === verdict)) ?? 'unknown';
}
