// no-unit-test: test/remedy/batch.test.ts goes through every way of it
import fs, { constants } from 'node:fs/promises';
import path from 'node:path';
import { hashOf } from '../book/hash';
import { isWithin } from '../book/settings/within';
import type { Conversion } from '../shared/conversion';
import type { RemedyResult, RemedyWish } from '../shared/remedy';
import type { Converters } from './converters';
import { arrive, takePlace } from './keep/arrive';
import { flushFile } from './keep/flush';
import { CHANGED } from './keep/originals';
import type { OpenKeep } from './keep/place';
import { replacePicture } from './keep/replace';
import { withTemporary } from './keep/temporary';
import type { Asked, Copy, Order, Place } from './plan/types';
import { wishKey } from './plan/wish-key';
import { RemedyError } from './remedy-error';
import type { Results } from './results';

/** A picture to be converted, and what its result may take the place of. */
export interface Undertaking {
  asked: Asked;
  order: Order | Copy;
  /** SHA-256 of an earlier result of ours; null: nothing has the result's name. In place: null. */
  replaces: string | null;
}

export interface Means {
  converters: Pick<Converters, 'convert'>;
  results: Results;
  wish: RemedyWish;
  place: Place;
  /** In place only. */
  keep: OpenKeep | null;
  /** Lets one replacement happen at a time. */
  inTurn: <T>(work: () => Promise<T>) => Promise<T>;
  signal?: AbortSignal;
}

/**
 * Converts one picture. The result gets its name only when it is whole, proven and on the disk, and only if the picture
 * still is what was read.
 * @throws RemedyError, ChildFailure, what the file system says, the signal's reason: then nothing was changed
 */
export function carryOut(of: Undertaking, means: Means): Promise<Conversion> {
  const { asked, order, replaces } = of;
  return 'format' in order
    ? convertAs({ asked, order, replaces }, means)
    : copyAs({ asked, order, replaces }, means);
}

async function convertAs(
  { asked, order, replaces }: Undertaking & { order: Order },
  means: Means,
): Promise<Conversion> {
  const { converters, wish, place, keep, signal } = means;
  if (place.kind === 'folder') await makeFolder(path.dirname(order.output), place.folder);
  const result = await withTemporary(order.output, async temporary => {
    const { sha256, encoding, space, chroma } = asked.pages[0];
    const known = { sha256, encoding, space, chroma };
    const made = await converters.convert({ file: asked.file, temporary, wish: order.wish, known }, signal);
    if (made.from !== sha256) throw new RemedyError(CHANGED);
    const { from } = made;
    const to = made.proof.sha256;
    if (keep)
      await means.inTurn(() =>
        replacePicture(keep, { file: asked.file, temporary, from, to, wish: wishKey(wish) }),
      );
    else {
      if ((await hashOf(asked.file)) !== from) throw new RemedyError(CHANGED);
      await put(temporary, order, replaces);
      await means.results.remember(order.output, {
        ...{ from, to, source: asked.file, replaces },
        wish: wishKey(order.wish),
      });
    }
    return made;
  });
  return converted(asked, order, result, wish);
}

/** A picture that is right already, into the folder for the results. */
async function copyAs({ asked, order, replaces }: Undertaking, means: Means): Promise<Conversion> {
  const { wish, place } = means;
  if (place.kind === 'folder') await makeFolder(path.dirname(order.output), place.folder);
  const { sha256 } = asked.pages[0];
  await withTemporary(order.output, async temporary => {
    await fs.copyFile(asked.file, temporary, constants.COPYFILE_FICLONE);
    await fs.chmod(temporary, (await fs.stat(asked.file)).mode | 0o600);
    await flushFile(temporary);
    if ((await hashOf(temporary)) !== sha256) throw new RemedyError(CHANGED);
    await put(temporary, order, replaces);
    const made = { from: sha256, to: sha256, source: asked.file, wish: wishKey(wish), replaces };
    await means.results.remember(order.output, made);
  });
  return copied(asked, order, wish);
}

/** What became of a picture that was copied, or would be. */
export const copied = (asked: Asked, order: Copy, { to }: RemedyWish): Conversion => ({
  path: asked.path,
  outcome: 'copied',
  output: order.shown,
  sha256: asked.pages[0].sha256,
  from: asked.pages[0].encoding,
  to,
  format: null,
  bits: null,
  reason: null,
  proof: null,
  moved: null,
  told: order.told,
});

const put = (temporary: string, { output }: Copy, replaces: string | null): Promise<void> =>
  replaces ? takePlace(temporary, output, replaces, TOUCHED) : arrive(temporary, output);

const TOUCHED =
  'The earlier result was changed while the picture was converted anew, and was not written over: delete or rename it.';

async function makeFolder(folder: string, output: string): Promise<void> {
  await fs.mkdir(folder, { recursive: true });
  const [inner, outer] = await Promise.all([folder, output].map(each => fs.realpath(each)));
  if (!isWithin(outer, inner))
    throw new RemedyError(
      `"${path.relative(output, folder)}" in the folder for the results is a link that leads out of it, so nothing was written there.`,
    );
}

function converted(asked: Asked, order: Order, result: RemedyResult, { to }: RemedyWish): Conversion {
  return {
    path: asked.path,
    outcome: 'converted',
    output: order.shown,
    sha256: result.from,
    from: result.fromEncoding,
    to,
    format: result.format,
    bits: result.bits,
    reason: null,
    proof: result.proof,
    moved: result.moved,
    told: [...order.told, ...result.told],
  };
}
