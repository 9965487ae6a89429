import { count, inOrders, list } from '../../rules/words';
import type { Comparison, PageChange, PictureChange, SetForecast } from '../../shared/comparison';
import { nameOf } from '../text/blocks';
import { isBroken, isMissing, leavesBlank } from './blank';
import { whoseChanged } from './settings';
import { waivedWords } from './waived';

/** How pictures are told. */
type Call = (names: readonly string[]) => string;

/** So many pictures, or rules, are named. */
const NAMED = 3;

const byName: Call = names => list(names, NAMED);

/** Where a name could be taken for something else, as for a command. */
export const byNumber: Call = ({ length }) => count(length, 'picture');

/**
 * What is read first, and often alone: what stands against printing, then what changed, and at last how much of the book was
 * judged.
 */
export function headline(comparison: Comparison, call: Call = byName): string {
  const { errors, warnings } = comparison.summary.new;
  const against = [standing(comparison, call), waivedWords(comparison)];
  return [
    comparison.isFirst ? FIRST : '',
    ...(errors || warnings ? against : against.reverse()),
    whatChanged(comparison, call),
    byThemselves(comparison),
    submodules(comparison),
  ]
    .filter(Boolean)
    .join(' ');
}

const FIRST =
  "Before, there was nothing in the book's folder under its name now, so all of it is new: if it was renamed and changed at once, compare with the commit that renamed it.";

/** New errors and warnings, then what no count of them tells. '' where nothing was looked at. */
function standing(comparison: Comparison, call: Call): string {
  const { summary, unread, beyond, changes, waived } = comparison;
  const { errors, warnings } = summary.new;
  const besides = untold(comparison, call);
  if (errors || warnings) {
    const counts = [
      ...(errors ? [count(errors, 'new error')] : []),
      ...(warnings ? [count(warnings, 'new warning')] : []),
    ];
    return `${[list(counts), ...besides].join('; ')}.`;
  }
  const isWhole = !unread && !beyond.length;
  if (besides.length) {
    const no = waived.length ? 'No other error or warning' : 'No error or warning';
    return `${no} ${isWhole ? 'is new' : 'was found that is new'}, but ${besides.join('; ')}.`;
  }
  const nothing = waived.length ? 'Nothing else that is new' : 'Nothing new';
  if (isWhole) return `${nothing} stands against printing.`;
  const { notes } = summary.new;
  const but = notes ? ` but ${count(notes, 'note')}` : '';
  return !unread || wasLooked(changes) ? `${nothing}${but} was found.` : '';
}

/** What stands against printing, or lets it pass unseen, whatever the rules make of it: a clause each. */
function untold({ changes, settings, slips = [], summary, unlooked }: Comparison, call: Call): string[] {
  const { errors, warnings } = summary.new;
  const isQuiet = !errors && !warnings;
  return [
    ...clause(pagesThat(isBroken, changes), ['cannot be read', 'cannot be read'], call),
    ...clause(pagesThat(isAway, changes), ['was not fetched', 'were not fetched'], call),
    ...clause(unlooked?.pictures ?? [], UNCHECKED, call),
    ...clause(unlooked?.never ?? [], NEVER, call),
    ...(unlooked?.texts.length ? [lacking(unlooked.texts.length)] : []),
    ...clause(notThere(changes), ['is placed and not there', 'are placed and not there'], call),
    ...clause(settings.off ?? [], ['runs no more', 'run no more']),
    ...clause(settings.weaker ?? [], ['counts for less now', 'count for less now']),
    ...clause(settings.stricter ?? [], ['counts for more now', 'count for more now']),
    ...(slips.length ? [vain(slips.length)] : []),
    ...(isQuiet && settings.forecasts.some(isMore) ? [MORE_TINT] : []),
  ];
}

const UNCHECKED = [
  'is still there and not checked any more',
  'are still there and not checked any more',
] as const;

const NEVER = ['is placed since and not checked', 'are placed since and not checked'] as const;

const lacking = (texts: number): string =>
  `${count(texts, 'text')} that ${texts === 1 ? 'is' : 'are'} taken in by a layout ${texts === 1 ? 'is' : 'are'} not there`;

const vain = (lines: number): string =>
  `${count(lines, 'line')} of the settings ${lines === 1 ? 'says' : 'say'} something in vain now`;

const clause = (names: readonly string[], [is, are]: readonly [string, string], call = byName): string[] =>
  names.length ? [`${call(names)} ${names.length === 1 ? is : are}`] : [];

/** As they are now; by name, since somebody has to do something about them. */
const pagesThat = (
  is: (after: PageChange['after']) => boolean,
  changes: readonly PictureChange[],
): string[] =>
  changes.flatMap(({ path, pages }) =>
    pages.flatMap(({ page, after }) => (is(after) ? [nameOf(path, page)] : [])),
  );

const isAway = (after: PageChange['after']): boolean => after?.facts.unreadable?.reason === 'not-fetched';

/** Those that no new finding counts. */
const notThere = (changes: readonly PictureChange[]): string[] =>
  changes.flatMap(({ path, pages }) =>
    pages.some(
      ({ after, findings }) => isMissing(after) && findings.new.every(({ severity }) => severity === 'note'),
    )
      ? [path]
      : [],
  );

/** By the orders that a person is told. */
const isMore = ({ before, after }: SetForecast): boolean =>
  after > before && inOrders(after) !== inOrders(before);
const MORE_TINT = 'a tint is likely to be seen more often';

function whatChanged(comparison: Comparison, call: Call): string {
  const { base, changes, summary, rearranged, beyond } = comparison;
  const renamed = base.folderThen === undefined ? [] : [folderWas(base.folderThen, call)];
  const elsewhere = rearranged.length
    ? [`${count(rearranged.length, 'picture')} ${rearranged.length === 1 ? 'stands' : 'stand'} elsewhere`]
    : [];
  const whose = whoseChanged(comparison);
  if (!changes.length) {
    const besides = list([
      ...(whose.length ? [`its ${list(whose)} did`] : []),
      ...renamed.map(words => `its ${words}`),
      ...elsewhere,
    ]);
    return `No picture of the book${beyond.length ? ' outside of its submodules' : ''} changed${besides && `, but ${besides}`}.`;
  }
  const blank = changes.filter(leavesBlank);
  const out = STILL.map(([still, words]) => ({ words, some: changes.filter(each => each.still === still) }));
  const apart = [...blank, ...out.flatMap(({ some }) => some)];
  const many = (kind: PictureChange['kind']) =>
    summary.changes[kind] - apart.filter(change => change.kind === kind).length;
  const what = [
    ...(Object.keys(KIND) as PictureChange['kind'][])
      .filter(kind => many(kind))
      .map(kind => `${many(kind)} ${KIND[kind]}`),
    ...out.flatMap(({ words, some }) => (some.length ? [`${some.length} ${words}`] : [])),
    ...(blank.length ? [`${blank.length} placed and not there`] : []),
  ];
  const also = [
    ...(whose.length ? [`the ${list(whose)} changed`] : []),
    ...renamed.map(words => `the ${words}`),
    ...elsewhere,
  ];
  return `${count(changes.length, 'picture')}: ${list(what, what.length)}${also.length ? `; ${list(also)}` : ''}.`;
}

const folderWas = (then: string, call: Call): string => {
  if (!then) return 'folder was the top of the repository before';
  return `folder was renamed${call === byNumber ? '' : ` from ${then}`}`;
};

/** Not in the book any more, and not gone. */
const STILL = [
  ['left-out', 'left out of the check'],
  ['unplaced', 'placed no more'],
] as const;

const KIND: Record<PictureChange['kind'], string> = {
  added: 'new',
  deleted: 'gone',
  changed: 'changed',
  renamed: 'renamed',
  moved: 'renamed and changed',
  mode: 'with another file mode alone',
};

/** Whoever reads this line alone must not take what was not looked at for good. */
function byThemselves({ unread, changes }: Comparison): string {
  if (!unread) return '';
  const others = unread === 1 ? 'picture was' : `${unread} pictures were`;
  return wasLooked(changes)
    ? `Each looked at by itself; the other ${others} not compared.`
    : `Nothing was judged: the ${others} not looked at.`;
}

/** Their names follow elsewhere: some services look for commands in this line. */
function submodules({ beyond }: Comparison): string {
  if (!beyond.length) return '';
  const which = beyond.length === 1 ? 'A submodule' : `${beyond.length} submodules`;
  return `${which} changed: pictures in ${beyond.length === 1 ? 'it' : 'them'} were not compared.`;
}

/** Of a picture whose file mode alone changed nothing is read. */
const wasLooked = (changes: Comparison['changes']): boolean => changes.some(({ pages }) => pages.length > 0);
