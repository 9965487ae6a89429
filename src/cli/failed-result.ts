// no-unit-test: test/cli/failed-result.test.ts runs the built program where nothing can be checked
import { writers } from '../report/check';
import type { CheckFormat } from '../report/formats';
import type { Place } from '../report/place';
import type { Done, Trouble } from '../report/trouble';
import type { BookReport } from '../shared/finding';
import { Failure } from './failure';
import { Interrupted } from './interrupt';
import { discardResult, type Standing, writeResult } from './output';
import { placeOf } from './place';
import { styleOf } from './style';

export interface Resulting extends Standing {
  format: CheckFormat;
  output?: string;
  /** What the work was to do with the book. */
  done?: Done;
}

/** Where the book lies, filled in by the work as soon as it has found that out. */
export interface Whereabouts {
  /** Its folder. */
  root: string | null;
  /** Its place, where that is known without the folder. */
  place?: Place;
}

/**
 * Runs work that ends in a result. Where it fails, the result says so in every format that can, and an older one that
 * could be taken for this one's is taken away in the others; then it fails as before. Who stopped it knows that no
 * result has come, and keeps what there was.
 */
export async function withResult<T>(result: Resulting, at: Whereabouts, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const known = error instanceof Interrupted || (error instanceof Failure && error.more.told);
    if (!known) await leave(error, result, at).catch(() => {});
    throw error;
  }
}

/** What it fails at itself is told no more: why there is no result goes first. */
async function leave(error: unknown, result: Resulting, { root, place: known }: Whereabouts): Promise<void> {
  const { format, output, done } = result;
  if (format === 'json' || format === 'html') {
    if (output !== undefined) await discardResult(output, result);
    return;
  }
  // a person at a terminal reads the error itself
  if (format === 'text' && output === undefined) return;
  const place = known ?? (root === null ? NOWHERE : await placeOf(root, undefined));
  const troubles = troublesOf(error, place);
  const circumstances = {
    place,
    troubles,
    failing: new Set<never>(),
    style: styleOf(output),
    shown: [],
    done,
  };
  await writeResult(writers[format](NOTHING, circumstances), output, result);
}

const NOWHERE: Place = { folder: '', settings: null };

const NOTHING: BookReport = {
  targets: [],
  pictures: [],
  findings: [],
  notices: [],
  summary: { pictures: 0, errors: 0, warnings: 0, notes: 0, encodings: {} },
};

function troublesOf(error: unknown, { folder }: Place): Trouble[] {
  if (error instanceof Failure && error.more.problems?.length)
    return error.more.problems.map(({ file, line, column, message }) => ({
      message,
      at: file.startsWith('../') ? null : { file: folder + file, line, column },
    }));
  return [{ message: error instanceof Error ? error.message : String(error), at: null }];
}
