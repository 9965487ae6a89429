// no-unit-test: it joins parts that have their own tests; test/e2e/suites/overview tests it as a process
import fs from 'node:fs/promises';
import path from 'node:path';
import { headOf } from '../../book/head';
import type { Pool } from '../../book/pool';
import { repositoryOf } from '../../book/repository';
import { isOwnPage } from '../../layout';
import { arrive } from '../../remedy/keep/arrive';
import { withTemporary } from '../../remedy/keep/temporary';
import { writers } from '../../report/check';
import { shownOf } from '../../report/page/shown';
import { adviceOn } from '../../report/sheet/advice';
import { contactDrawings, contactGreys } from '../../report/sheet/contact';
import type { CheckerAnswers, Progress } from '../../shared/checker-protocol';
import type { BookReport } from '../../shared/finding';
import type { Contact, PictureKey } from '../../shared/overview';
import type { SmallPictures } from './small-pictures';

/** What is drawn of some pictures of a report; those that are not in it any more are left out. */
export async function contactsOf(
  { root, pictures }: CheckerAnswers['contacts']['request'],
  report: BookReport,
  small: SmallPictures,
  signal: AbortSignal,
): Promise<(PictureKey & Contact)[]> {
  const all = await Promise.all(
    pictures.map(async ({ path, page, have }) => {
      const picture = report.pictures.find(each => each.path === path && each.facts.page === page);
      if (!picture) return [];
      const shown = have ? {} : await small.of(root, picture, signal);
      const advice = adviceOn(picture, report.findings);
      return {
        ...{ path, page },
        ...{ small: null, trouble: null, ...shown },
        drawings: contactDrawings(picture, advice),
        greys: contactGreys(picture, advice),
      };
    }),
  );
  return all.flat();
}

/**
 * Writes the book's page as `evengrey check --format html` does: whole or not at all.
 * @throws where it cannot be written, and where something is there that was not to be replaced, or is none of our pages
 */
export async function writePage(
  { root, file, replace }: CheckerAnswers['bookPage']['request'],
  report: BookReport,
  pool: Pick<Pool, 'small'>,
  { signal, onProgress }: { signal: AbortSignal; onProgress: (progress: Progress) => void },
): Promise<null> {
  if (!/\.html?$/i.test(file))
    throw new Error('The page is for a browser: give it a name that ends in .html.');
  await refuseOthers(file);
  const shown = await shownOf(report, {
    ...{ root, pool, signal },
    onProgress: (done, total) => onProgress({ done, total }),
  });
  const folder = path
    .relative(await repositoryOf(root), root)
    .split(path.sep)
    .join('/');
  const text = writers.html(report, {
    place: { folder: folder && `${folder}/`, settings: null },
    ...{ failing: new Set(), style: { width: 0, colour: false }, shown },
  });
  await withTemporary(file, async temporary => {
    await fs.writeFile(temporary, text, { flag: 'wx' });
    signal.throwIfAborted();
    await (replace ? fs.rename(temporary, file) : arrive(temporary, file));
  });
  return null;
}

/** A layout is a page too: whoever says that it may be replaced may have meant another. @throws Error */
async function refuseOthers(file: string): Promise<void> {
  const head = await headOf(file).catch(() => Buffer.alloc(0));
  if (head.length && !isOwnPage(head.toString('utf8')))
    throw new Error(
      `"${path.basename(file)}" is there already and is no page of Evengrey, so it is not written over. Give another name.`,
    );
}
