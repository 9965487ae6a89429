import { count, list } from '../../rules/words';
import type { BookReport, Finding } from '../../shared/finding';
import type { PictureFacts } from '../../shared/picture';
import { reportOf } from '../check';
import { type Idle, idleNotice, slipsOf } from '../idle-settings';
import { type JudgeBookOptions, type JudgedBook, judgeBook, type ReadFile } from '../judge-book';
import type { Searched } from '../notices';
import type { Settings } from '../settings/settings';
import { splitWaived } from '../waivers/apply';
import { namedIn } from './claims';
import type { Reason } from './concerned';
import { drawnIn } from './drawn-in';

/** What of a book changed, or is asked for by name, and what is known of the rest. */
export interface ChangedFiles {
  changed: readonly ReadFile[];
  /** Of the other pictures, by path; null: they were not looked at. */
  others: ReadonlyMap<string, readonly PictureFacts[]> | null;
  /** How many others there are. */
  unchanged: number;
  /** What was said of the book as it was and not waived, by which is known what of the others is new; null or absent: nobody knows. */
  before?: JudgedBook | null;
  /** Of `changed`: those whose content is what it was, and why they are judged anew. */
  concerned?: ReadonlyMap<string, Reason>;
  /** Pictures that are taken out of the book. */
  gone?: readonly string[];
  /** How many pictures lie in what was named, changed or not. */
  held?: number;
  /** Submodules that changed, of which nobody looked at the pictures. */
  beyond?: readonly string[];
  /** What the settings say in vain since. */
  idle?: readonly Idle[];
  /** `changed since main (1a2b3c4d5e)`, `staged`, `named`: as it ends "what is". */
  which: string;
}

/**
 * A report of the pictures that changed, judged beside the others where these are known. What is said of the book counts
 * as far as it names one of them, or none at all.
 */
export async function reportOfChanged(
  {
    changed,
    others,
    unchanged,
    before = null,
    which,
    concerned: judgedAnew = new Map(),
    gone = [],
    held,
    beyond,
    idle = [],
  }: ChangedFiles,
  settings: Settings,
  found: Searched,
  { placements, waivers, signal }: Pick<JudgeBookOptions, 'placements' | 'waivers' | 'signal'> = {},
): Promise<BookReport> {
  const rest = [...(others ?? [])].map(([path, facts]) => ({ path, facts }));
  const files = [...changed, ...rest].sort((x, y) => (x.path < y.path ? -1 : 1));
  const partial = others === null;
  const looked = new Set(changed.map(({ path }) => path));
  const judged = await judgeBook(files, settings, {
    ...{ partial, placements, waivers, signal },
    changed: new Set([...looked].filter(path => !judgedAnew.has(path))),
  });
  const drawn =
    before && others ? drawnIn(before, splitWaived(judged, waivers ?? []), new Set(others.keys())) : [];
  for (const path of drawn) looked.add(path);
  const concerned = new Map([...judgedAnew, ...drawn.map(path => [path, 'others'] as const)]);
  const concerns = (finding: Finding) => {
    const named = namedIn(finding);
    return !named.length || named.some(path => looked.has(path as string));
  };
  const report = reportOf(
    {
      pictures: judged.pictures.filter(({ path }) => looked.has(path)),
      findings: looked.size ? judged.findings.filter(concerns) : [],
      spreads: judged.spreads,
    },
    found,
    settings,
    false,
  );
  const slips = slipsOf(idle);
  const scope = {
    ...{ which, unread: partial ? unchanged : 0, gone },
    ...(held !== undefined && { held: held + gone.length }),
    ...(beyond?.length && { beyond }),
    ...(!partial && { others: judged.pictures.filter(({ path }) => !looked.has(path)) }),
  };
  return {
    ...report,
    scope,
    ...(slips.length && { slips }),
    notices: [
      ...sentence(report.summary.pictures, unchanged - drawn.length, partial, which, concerned),
      ...(gone.length && !report.summary.pictures ? [`Taken out of the book: ${list(gone, NAMED)}.`] : []),
      ...report.notices,
      ...idle.map(idleNotice),
    ],
  };
}

const NAMED = 5;

function sentence(
  changed: number,
  unchanged: number,
  partial: boolean,
  which: string,
  concerned: ReadonlyMap<string, Reason>,
): string[] {
  if (!changed) return [];
  const because = (reason: Reason) => [...concerned].flatMap(([path, why]) => (why === reason ? path : []));
  const all = (why: string) => [
    `${why}, so all pictures were checked, not only what is ${which}: ${count(changed, 'picture')}.`,
  ];
  if (because('settings').length) return all('The settings are not what they were');
  if (because('book').length) return all('What is said of the book is not waived any more');
  const [placed, unwaived, drawn] = [because('placing'), because('waiver'), because('others')];
  const only = [
    `Only what is ${which} was checked: ${count(changed, 'picture')}`,
    placed.length &&
      `with ${list(placed, NAMED)}, which ${placed.length === 1 ? 'is' : 'are'} let in or placed otherwise by layouts or ignore files`,
    unwaived.length && `with ${list(unwaived, NAMED)}, of which something is not waived any more`,
    drawn.length &&
      `with ${list(drawn, NAMED)}, of which something is said since the others are what they are now`,
  ]
    .filter(Boolean)
    .join(', ')
    .concat('.');
  if (!unchanged) return [only];
  const others = unchanged === 1 ? 'The one other' : `The ${unchanged} others`;
  const were = unchanged === 1 ? 'was' : 'were';
  return [
    partial
      ? `${only} ${others} ${were} not looked at, so nothing is said that compares pictures with each other, nor what to save one as where there is a choice. Check the whole book once, which remembers the others, or add --whole.`
      : `${only} ${others} ${were} compared with ${changed === 1 ? 'it' : 'them'}.`,
  ];
}
