import { claimsOn } from '../../book/revisions/claims';
import { count, inOrders, list } from '../../rules/words';
import type {
  ComparedRevision,
  Comparison,
  PageChange,
  PictureChange,
  SeverityCounts,
} from '../../shared/comparison';
import type { PictureReport } from '../../shared/finding';
import { facesOthers } from './arranged';
import { breaks, isMissing, leavesBlank, wasThere } from './blank';

/** So many digits name a commit to a person. */
const SHORT = 10;

export const shortly = ({ commit }: Pick<ComparedRevision, 'commit'>): string => commit.slice(0, SHORT);

/** `Before: main (1a2b3c4d5e), where the two parted. After: the current commit (...).` */
export function revisions({ base, head, mergeBase }: Comparison): string {
  const name = ({ asked, commit, folder, folderThen }: ComparedRevision, way = '') => {
    if (folder) return 'the folder as it is now, committed or not';
    const short = shortly({ commit });
    const same = asked !== null && commit.startsWith(asked);
    const there =
      folderThen === undefined ? '' : `, ${folderThen ? `in ${folderThen}` : 'at the top of the repository'}`;
    return same ? short + there : `${asked ?? 'the current commit'} (${way}${short}${there})`;
  };
  return `Before: ${name(base, mergeBase ? 'parted at ' : '')}. After: ${name(head)}.`;
}

/** A link that leads out of the book's folder has taken its place. */
const ASTRAY = 'replaced by a link that was not followed';

/** `new, between plates/05.tif and plates/07.tif` */
export function happened(change: PictureChange): string {
  const { kind, from, swapped, modes, still, pages } = change;
  if (leavesBlank(change))
    return wasThere(change) ? 'not there any more, and still placed' : 'placed by a layout, and not there';
  const mode = modes ? `file mode ${modes.before}, now ${modes.after}` : '';
  const what: Record<PictureChange['kind'], string> = {
    added: 'new',
    deleted: still ? STILL[still] : pages.some(({ after }) => after) ? ASTRAY : 'no longer in the book',
    changed: 'changed',
    renamed: swapped
      ? `names swapped, renamed from ${from}, content unchanged`
      : `renamed from ${from}, content unchanged`,
    moved: `renamed from ${from}, and changed`,
    mode: 'content unchanged',
  };
  return [what[kind], mode, kind === 'mode' ? '' : stands(change)].filter(Boolean).join(', ');
}

const STILL = {
  'left-out': 'left out of the check since, and its file still there',
  unplaced: 'placed by no layout any more, and its file still there',
};

/** Without "before" and "after", which are times here. */
function stands(change: PictureChange): string {
  const { kind, faced } = change;
  const { before, after, beside } = change.neighbours;
  const there = kind !== 'added' && kind !== 'deleted';
  const isOther = there && facesOthers(change);
  const earlier = isOther ? ` (before ${faced.length ? `with ${list(faced)}` : 'on none'})` : '';
  const spread = beside.length
    ? `on a spread with ${list(beside)}${earlier}`
    : isOther
      ? `on no spread any more${earlier}`
      : '';
  const one = before ?? after;
  const place =
    before && after ? `between ${before} and ${after}` : one && !beside.includes(one) ? `next to ${one}` : '';
  return [place, spread].filter(Boolean).join(', ');
}

/** How it is stored, before and after where that differs. */
export function stored({ before, after }: PageChange): string {
  const [was, is] = [before, after].map(picture => picture?.facts.encoding);
  if (isMissing(after)) return was && !isMissing(before) ? `was stored as ${was}` : '';
  if (isMissing(before))
    return is ? `stored as ${is}; before, it was placed and not there` : 'was placed and not there';
  const [could, cannot] = [
    isNotFetched(before) ? 'was not fetched' : 'could not be read',
    isNotFetched(after) ? 'is not fetched' : 'cannot be read',
  ];
  if (was === is || !was || !is) {
    const [known, way] = is ? [is, ''] : [was, 'was '];
    if (known !== 'unreadable') return `${way}stored as ${known}`;
    return is ? cannot : could;
  }
  if (is === 'unreadable') return `was stored as ${was}, now ${cannot}`;
  if (was === 'unreadable') return `stored as ${is}; before, it ${could}`;
  return `stored as ${was}, now ${is}`;
}

const isNotFetched = (picture: PictureReport | null): boolean =>
  picture?.facts.unreadable?.reason === 'not-fetched';

/** How often a tint is seen, before and after, a line a target: `in about 2 orders of 10`. */
export function tints({ before, after }: PageChange): { target: string; words: string }[] {
  const picture = after ?? before;
  if (!picture) return [];
  return picture.targets.flatMap(({ name }) => {
    const [was, is] = [before, after].map(side => side && tintOn(side, name));
    if (!was && !is) return [];
    if (!is) return [{ target: name, words: `a tint was seen ${was}` }];
    const earlier = was === is ? ', as before' : was ? `; before ${was}` : '';
    return [{ target: name, words: `a tint is seen ${is}${earlier}` }];
  });
}

function tintOn({ targets, forecasts }: PictureReport, name: string): string | null {
  const forecast = forecasts[targets.findIndex(target => target.name === name)];
  if (!forecast) return null;
  const { seen, direction } = forecast.tint;
  return `${inOrders(seen)}${direction ? `, ${direction}` : ''}`;
}

/** Why a picture matches or does not, a line a target that has something to say. */
export function matched({ matches }: PageChange): { target: string | null; words: string }[] {
  return matches.flatMap(({ target, verdict, rules, waived, stored, distance, probability }) => {
    const away = distance ?? 0;
    const seen = probability ?? 0;
    const far = `about ${away.toFixed(1)} away from the others in a*, b*, seen on facing pages ${inOrders(seen)}`;
    if (verdict === 'unknown' && distance !== null)
      return [{ target, words: `whether it matches the book stays open (${far})` }];
    if (verdict === 'unknown' || verdict === 'alone') return [];
    if (verdict === 'matches')
      return [{ target, words: `matches the book${away >= FELT ? ` (about ${away.toFixed(1)} away)` : ''}` }];
    const by = [...rules, ...(waived ? ['waived'] : [])];
    if (verdict === 'ahead')
      return [{ target, words: `stored as all are to be, and others are not yet (${by.join('; ')})` }];
    if (verdict === 'along')
      return [
        { target, words: `stored like most of the others, and to be converted with them (${by.join('; ')})` },
      ];
    const apart = away >= FELT || seen >= CHANCE ? [far] : [];
    const among = stored ? [`${stored.as} among ${stored.others}`] : [];
    const why = [...among, ...by, ...apart];
    return [{ target, words: `does not match the book (${why.join('; ')})` }];
  });
}

/** Smaller distances in a*, b*, and rarer ones, are not worth a word. Own choice. */
const FELT = 0.5;
const CHANCE = 0.1;

/**
 * `New: 1 error, 2 warnings, 0 notes. Ended: ... As before: ...`, and what a check of the base counts where that is not what
 * ended and stayed.
 */
export function closing({ base: was, summary, unread, waived, changes }: Comparison): string {
  const of = ({ errors, warnings, notes }: SeverityCounts) =>
    `${count(errors, 'error')}, ${count(warnings, 'warning')}, ${count(notes, 'note')}`;
  const { base, ended, unchanged, regraded } = summary;
  const isSum = (['errors', 'warnings', 'notes'] as const).every(
    each => base[each] === ended[each] + unchanged[each],
  );
  const unseen = changes.some(({ pages }) =>
    pages.some(({ before }) => before?.facts.unreadable?.reason === 'not-fetched'),
  );
  const hadFindings = ({ before }: PageChange) => before && claimsOn(before, was.findings).length > 0;
  const reasons = [
    ...(waived.length ? ['what this change waives counts no more, and has not ended'] : []),
    ...(unseen ? ['what was not fetched then has not ended, since nobody knows what it was'] : []),
    ...(changes.some(each => breaks(each) || (leavesBlank(each) && wasThere(each)))
      ? ['nothing has ended that was said of a picture which is not there any more, or cannot be read']
      : []),
    ...(changes.some(({ still, pages }) => still === 'left-out' && pages.some(hadFindings))
      ? ['nothing has ended that was said of a picture which is not checked any more']
      : []),
    ...(regraded
      ? [
          `the settings have ${count(regraded, 'finding')} count for more or less, which is neither new nor ended`,
        ]
      : []),
  ];
  const why = reasons.length ? `: ${reasons.join('; ')}` : '';
  const before = isSum ? '' : ` Before, a check counted ${of(base)}${why}.`;
  return `New: ${of(summary.new)}. Ended: ${of(ended)}. As before${unread ? ', of what was looked at' : ''}: ${of(unchanged)}.${before}`;
}
