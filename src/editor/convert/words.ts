// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';
import { namesPicture } from '../../book/discovery/extensions';
import { kindOf } from '../../layout/kinds';
import type { ConvertAnswer, LeftAlone, UndoAnswer } from '../../shared/checker-protocol';

/**
 * The pictures or folders that are meant, as a title ends with them.
 * @param left what was chosen too and is left out
 */
export function subjectOf(files: readonly vscode.Uri[], left: readonly LeftAlone[] = []): string {
  const t = vscode.l10n.t;
  const all = files.length + left.length;
  const subject =
    files.length === 1
      ? path.posix.basename(files[0].path)
      : files.every(({ path }) => namesPicture(path))
        ? t('{0} pictures', files.length)
        : t('{0} pictures or folders', files.length);
  return left.length
    ? t('{0} of the {1} chosen; no readable file: {2}', subject, all, namesOf(left))
    : subject;
}

/** So many are named where a line is all there is. */
const NAMED = 2;

function namesOf(left: readonly LeftAlone[]): string {
  const names = left.slice(0, NAMED).map(({ path: at }) => path.posix.basename(at));
  const more = left.length - names.length;
  return more ? vscode.l10n.t('{0} and {1} more', names.join(', '), more) : names.join(', ');
}

/** Why nothing of what was chosen can be converted. */
export const nothingToConvert = (left: readonly LeftAlone[]): string =>
  [vscode.l10n.t('Nothing of this can be converted.'), ...left.slice(0, NAMED).map(reasonOf)].join(' ');

/**
 * What came of a conversion, in one message.
 * @param left what was chosen too and was left out
 */
export function convertWords(answer: ConvertAnswer, left: readonly LeftAlone[] = []): string {
  const { converted, skipped, failed, relinking, untoned, notices, stopped } = answer;
  const t = vscode.l10n.t;
  const [one] = converted;
  const single = converted.length === 1 && skipped.length + failed.length === 0;
  const head = single
    ? t('{0} is written. {1}', path.basename(one.output), one.proof)
    : counts([
        [converted.length, t('{0} converted', converted.length)],
        [skipped.length, t('{0} skipped', skipped.length)],
        [failed.length, t('{0} failed', failed.length)],
      ]);
  const why = stopped ? [stopped] : reasons(failed.length ? failed : converted.length ? [] : skipped);
  const placed = relinking ? relinkingWords(relinking) : [];
  const leftOut = converted.length + skipped.length + failed.length === 0 ? [...notices] : [];
  if (left.length) leftOut.push(t('Left out, since there is no readable file: {0}.', namesOf(left)));
  if (untoned.length)
    leftOut.push(
      t('Pictures that lost a strong tone, which may be meant: {0}. See the report.', untoned.length),
    );
  return [head, ...why, ...placed, ...leftOut].join(' ');
}

function relinkingWords({ edits, left, placedBefore }: NonNullable<ConvertAnswer['relinking']>): string[] {
  const t = vscode.l10n.t;
  const inLayouts = edits.filter(({ file }) => kindOf(file) !== null).length;
  const inSettings = edits.length - inLayouts;
  if (!edits.length && !left.length && placedBefore)
    return [t('The layouts place what was converted already.')];
  return [
    ...(inLayouts || !left.length ? [t('Lines of layouts that place the result now: {0}.', inLayouts)] : []),
    ...(inSettings ? [t('Names in evengrey.json that go with them: {0}.', inSettings)] : []),
    ...(left.length ? [t('Lines left as they are: {0}.', left.length), ...reasons(left)] : []),
  ];
}

export function undoWords({ restored, skipped, failed, stopped }: UndoAnswer): string {
  const t = vscode.l10n.t;
  const head =
    restored.length === 1
      ? t('{0} is the original again, bit for bit.', path.posix.basename(restored[0]))
      : restored.length
        ? t('{0} originals are back, bit for bit.', restored.length)
        : t('Nothing was undone.');
  const why = stopped ? [stopped] : reasons(failed.length ? failed : restored.length ? [] : skipped);
  if (!restored.length && !why.length) why.push(t('No picture here was converted in place.'));
  return [head, ...why].join(' ');
}

const counts = (parts: [count: number, words: string][]) => {
  const some = parts.filter(([count]) => count > 0).map(([, words]) => words);
  return some.length ? `${some.join(', ')}.` : vscode.l10n.t('There was no picture to convert.');
};

const reasonOf = ({ path: at, reason }: LeftAlone): string => `${at}: ${reason}`;

/** The first by its name; the report has them all. */
function reasons(left: readonly LeftAlone[]): string[] {
  if (!left.length) return [];
  const words = reasonOf(left[0]);
  return left.length === 1 ? [words] : [vscode.l10n.t('{0} The others are in the report.', words)];
}
