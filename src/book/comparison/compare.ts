import { groundsOn } from '../../rules/targets';
import type { ComparedRevision, Comparison } from '../../shared/comparison';
import { Blobs } from '../git/blobs';
import { slipsOf } from '../idle-settings';
import type { JudgedBook } from '../judge-book';
import { type Overrides, override } from '../overrides';
import { namingOf, newSlips } from '../revisions/new-slips';
import { pageChanges, unchangedPages } from '../revisions/page-changes';
import { missingWaivers } from '../revisions/settings-changes';
import { judgeSide, type Side } from '../revisions/side';
import { submodulesOf } from '../revisions/told';
import type { Settings } from '../settings/settings';
import { splitWaived } from '../waivers/apply';
import { type ContentReading, contentsOfBoth } from './contents';
import { type AskedEnds, type Ends, endsOf, FOLDER } from './ends';
import { joined } from './join';
import { noticesOf } from './notices';
import { settingsBetween } from './settings-between';
import { settingsEffect } from './settings-effect';
import { sidesOf } from './sides';
import { stillIn, unlooked } from './unlooked';
import { waivedSince } from './waived-since';

export interface CompareOptions extends AskedEnds, Omit<ContentReading, 'repository' | 'blobs'> {
  /** Go before the settings of either revision. */
  conditions: Overrides;
  /** Read the unchanged pictures too, where they are not known and the settings are what they were: the set is judged whole. */
  whole: boolean;
}

/**
 * Compares a book at two revisions, each with the settings that it had then. Only contents that differ are read; what
 * the unchanged ones are is taken from the cache if all of them are there, else nothing is said of the set; where the
 * settings changed what pictures are judged by, all are read.
 * @throws GitError, RevisionSettingsError; the signal's reason when cancelled
 */
export async function compareRevisions(options: CompareOptions): Promise<Comparison> {
  const ends = await endsOf(options);
  const blobs = new Blobs(ends.repository);
  try {
    return await compared(ends, blobs, options);
  } finally {
    blobs.close();
    await ends.close();
  }
}

async function compared(ends: Ends, blobs: Blobs, options: CompareOptions): Promise<Comparison> {
  const { root, signal, conditions } = options;
  const { repository, changes } = ends;
  const adjust = (settings: Settings) => ({ ...settings, targets: override(settings.targets, conditions) });
  const { borrowed, ...sides } = await sidesOf(root, ends, blobs, adjust);
  const { base, head } = sides;
  const pages = pageChanges(changes, base, head);
  const same = unchangedPages(base, head, pages);
  const paths = same.map(([path]) => path);
  const settings = settingsBetween(sides, pages, paths);
  // by other settings the unchanged are judged otherwise, and nobody knows how who has not looked at them
  const whole = options.whole || settings.changes.length > 0;
  const { factsOn, known, alike, sizes } = await contentsOfBoth(
    sides,
    { pages, same, whole },
    { ...options, repository, blobs },
  );
  const other = pages.filter(({ before, after }) => after && before?.oid !== after.oid);
  const changed = new Set(other.map(({ path }) => path));
  const judge = async (side: Side) => {
    const how = { partial: !known, changed: side === head ? changed : undefined, signal };
    return splitWaived(await judgeSide(side, factsOn(side), how), side.waivers);
  };
  const still = await stillIn(head, base.pages.keys());
  const { notices: outOfSight, ...outOf } = unlooked(changes, base, head, still);
  const idle = newSlips(namingOf(base), namingOf(head));
  const judged = { before: await judge(base), after: await judge(head) };
  const notices = await noticesOf({ ends, sides, judged, same, known, idle, outOfSight });
  return joined({
    base: {
      ...revisionOf(options.base, ends.base, base, judged.before),
      ...(ends.folderThen !== null && { folderThen: ends.folderThen }),
    },
    head: revisionOf(options.head, ends.head, head, judged.after),
    isFirst: ends.after.size > 0 && ends.before.size === 0,
    mergeBase: ends.parted,
    ...{ sides, still, judged, pages, alike, sizes },
    unread: known ? 0 : same.length,
    beyond: submodulesOf(changes),
    waived: waivedSince(missingWaivers(head.waivers, base.waivers), judged.after),
    settings: {
      ...settings,
      forecasts: settings.changes.length ? settingsEffect(sides, judged, new Set(paths)) : [],
    },
    notices: [...borrowed, ...notices],
    slips: slipsOf(idle),
    unlooked: outOf,
  });
}

const revisionOf = (
  asked: CompareOptions['head'],
  commit: string,
  side: Side,
  judged: JudgedBook,
): ComparedRevision => ({
  asked: asked === FOLDER ? null : asked,
  commit,
  folder: asked === FOLDER,
  targets: side.settings.targets,
  pictures: side.pages.size + side.missing.length,
  findings: judged.findings,
  grounds: Object.fromEntries(
    side.settings.targets.map(target => [target.name, groundsOn(target, judged.pictures)]),
  ),
});
