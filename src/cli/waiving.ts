// no-unit-test: test/cli/actions/waivers.test.ts runs the built program
import path from 'node:path';
import { describeProblem } from '../book/settings/problem';
import { applyWaivers, waiveAll } from '../book/waivers/apply';
import { readWaivers, WAIVERS_FILE, writeWaivers } from '../book/waivers/file';
import type { Waiver } from '../book/waivers/key';
import { waiverNotices } from '../book/waivers/notices';
import type { CheckFormat } from '../report/formats';
import { count, list } from '../rules/words';
import type { BookReport } from '../shared/finding';
import { Failure } from './failure';
import { refusePlace } from './output';

export interface WaivingOptions {
  waivers?: string;
  waive?: boolean;
  showWaived?: boolean;
}

const BY_HAND =
  '--waive keeps what was waived before with its reasons, so it writes over no file that it cannot read. Put that place right by hand, bring an older version back from git, or move the file away to begin anew.';

/** The waivers of a check, and what their file is called in reports. */
export interface Waivers {
  waivers: Waiver[];
  file: string;
}

/** @throws Failure where the file is not there although it was named, or is no file of waivers */
export async function waiversOf(root: string, { waivers: named, waive }: WaivingOptions): Promise<Waivers> {
  const read = await readWaivers(root, { named: named && path.resolve(named) });
  if (read.problems.length)
    throw new Failure(
      `The waivers have a problem, so nothing was checked.\n${read.problems.map(problem => describeProblem(problem, root, process.cwd())).join('\n')}${waive ? `\n${BY_HAND}` : ''}`,
      { problems: read.problems },
    );
  if (named !== undefined && read.file === null && !waive)
    throw new Failure(`--waivers: there is no file "${named}". "--waive" writes one.`);
  return { waivers: read.waivers, file: named ?? WAIVERS_FILE };
}

/**
 * A report with its waived findings apart. With `waive` what stands in it is waived first, and the file written.
 * `complete`: the whole book was looked at, so that a waiver of nothing is stale. `again`: judges the same by
 * other waivers, where some are written.
 */
export async function withWaivers(
  report: BookReport,
  { waivers, file }: Waivers,
  { complete, again }: { complete: boolean; again?: (waivers: readonly Waiver[]) => Promise<BookReport> },
  { waive = false, showWaived = false, format }: WaivingOptions & { format: CheckFormat },
  root: string,
): Promise<BookReport> {
  let { report: waived, unused } = applyWaivers(report, waivers);
  let present = waivers;
  if (waive) {
    const target = file === WAIVERS_FILE ? path.join(root, WAIVERS_FILE) : path.resolve(file);
    await refusePlace(target);
    const pruned = complete ? unused.length : 0;
    let all = 0;
    let unknown: string[] = [];
    // what is waived is judged apart from its likes, of which something else may be said then
    for (let round = 0, added = 1; added && round < MOST_ROUNDS; round++, all += added) {
      const made = waiveAll(waived, present, complete ? [] : unused);
      ({ added, unknown } = made);
      present = made.waivers;
      ({ report: waived, unused } = applyWaivers((added && (await again?.(present))) || waived, present));
    }
    await writeWaivers(target, present);
    process.stderr.write(told(all, pruned, unknown, file));
  }
  const stale = complete ? unused : [];
  const notices = waiverNotices(waived, {
    file,
    waivers: present,
    stale,
    // annotations tell each beside its picture
    show: showWaived && format !== 'github' ? true : howMany(format),
  });
  return { ...waived, notices: [...waived.notices, ...notices] };
}

/** What is waived apart leaves fewer and fewer together. */
const MOST_ROUNDS = 8;

/** In a log and at a terminal somebody can type what is named; in an annotation, a comment or a page nobody can. */
const howMany = (format: CheckFormat): false | 'count' =>
  format === 'text' || format === 'json' ? false : 'count';

function told(added: number, pruned: number, unknown: readonly string[], file: string): string {
  const sentences = [
    `${file}: ${count(added, 'finding')} waived${pruned ? `, ${count(pruned, 'stale waiver')} taken out` : ''}.`,
    ...(added ? ['Say there why, and commit the file.'] : []),
    ...(unknown.length ? [`What was not read cannot be waived: ${list(unknown, 5)}.`] : []),
  ];
  return `${sentences.join(' ')}\n`;
}
