// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import path from 'node:path';
import * as vscode from 'vscode';
import { namesPicture } from '../../book/discovery/extensions';
import { kindOf } from '../../layout/kinds';
import type { ConvertAnswer, LeftAlone, UndoAnswer } from '../../shared/checker-protocol';
import type { Spared } from '../../shared/conversion';
import type { PlaceEdit } from '../../shared/layout-places';
import type { Changed, ToSave } from '../layout/relink';

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

/** Names without folders: the first of them, and how many more. */
export const namesOf = (left: readonly { path: string }[]): string =>
  named(left.map(({ path: at }) => path.posix.basename(at)));

function named(all: readonly string[]): string {
  const names = all.slice(0, NAMED).join(', ');
  return all.length > NAMED ? vscode.l10n.t('{0} and {1} more', names, all.length - NAMED) : names;
}

/** Why nothing of what was chosen can be converted. */
export const nothingToConvert = (left: readonly LeftAlone[]): string =>
  [vscode.l10n.t('Nothing of this can be converted.'), ...left.slice(0, NAMED).map(reasonOf)].join(' ');

/** What a message tells beside the answer. */
export interface Told {
  /** What was chosen too and was left out. */
  left?: readonly LeftAlone[];
  saving?: ToSave;
}

/** What came of a conversion, in one message. */
export function convertWords(answer: ConvertAnswer, { left = [], saving }: Told = {}): string {
  const { converted, skipped, failed, relinking, untoned, faint, spared, notices, stopped } = answer;
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
  const why = stopped
    ? [stopped]
    : reasons(failed.length ? failed : converted.length ? [] : skipped.filter(isNot(spared)));
  const placed = relinking ? relinkingWords(relinking) : [];
  const leftOut = converted.length + skipped.length + failed.length === 0 ? [...notices] : [];
  if (left.length) leftOut.push(t('Left out, since there is no readable file: {0}.', namesOf(left)));
  if (spared.length) leftOut.push(sparedWords(spared));
  if (untoned.length)
    leftOut.push(
      t(
        'A strong tone is gone, which may be meant: {0}. See the report.',
        namesOf(untoned.map(at => ({ path: at }))),
      ),
    );
  if (faint.length)
    leftOut.push(
      t(
        'A faint tone is gone, taken for what was left over: {0}. See the report.',
        namesOf(faint.map(at => ({ path: at }))),
      ),
    );
  return [head, ...why, ...placed, ...toSave(saving), ...leftOut].join(' ');
}

const sparedWords = (spared: readonly Spared[]): string =>
  `${vscode.l10n.t('Left as they are, since nobody said that they are to be grey.')} ${lossWords(spared)}`;

/** What of pictures would go, kind by kind. */
export function lossWords(losing: readonly Spared[]): string {
  const t = vscode.l10n.t;
  const names = (loses: Spared['loses']) => namesOf(losing.filter(each => each.loses === loses));
  const any = (loses: Spared['loses']) => losing.some(each => each.loses === loses);
  return [
    ...(any('colour') ? [t('In colour: {0}.', names('colour'))] : []),
    ...(any('tone') ? [t('With a strong tone, or one that is meant: {0}.', names('tone'))] : []),
    ...(any('line') ? [t('Stored in one bit, as line art is: {0}.', names('line'))] : []),
  ].join(' ');
}

const isNot =
  (others: readonly Spared[]) =>
  ({ path: at }: LeftAlone) =>
    !others.some(other => other.path === at);

function relinkingWords({ edits, left, placedBefore }: NonNullable<ConvertAnswer['relinking']>): string[] {
  const t = vscode.l10n.t;
  const inLayouts = linesOf(edits);
  const inSettings = edits.filter(edit => !isLayout(edit)).length;
  if (!edits.length && !left.length && placedBefore)
    return [t('The layouts place what was converted already.')];
  return [
    ...(inLayouts
      ? [t('Lines of layouts that place the result now: {0} ({1}).', inLayouts, filesOf(edits))]
      : left.length
        ? []
        : [t('Lines of layouts that place the result now: {0}.', 0)]),
    ...(inSettings ? [t('Names in evengrey.json that go with them: {0}.', inSettings)] : []),
    ...(left.length ? [t('Lines left as they are: {0}.', left.length), ...reasons(left)] : []),
  ];
}

const isLayout = ({ file }: PlaceEdit) => kindOf(file) !== null;

/** How many lines of layouts: one may place several pictures. */
const linesOf = (edits: readonly PlaceEdit[]): number =>
  new Set(edits.filter(isLayout).map(({ file, start }) => `${file}:${start.line}`)).size;

/** The layouts among them, by name. */
const filesOf = (edits: readonly PlaceEdit[]): string =>
  named([...new Set(edits.filter(isLayout).map(({ file }) => file))]);

/** What is left to be saved, and what could not be. */
export function toSave({ unsaved, notSaved }: ToSave = { unsaved: [], notSaved: [] }): string[] {
  const t = vscode.l10n.t;
  return [
    ...(unsaved.length
      ? [t('Changes of yours were not saved in {0}: the line is changed there too, save it.', named(unsaved))]
      : []),
    ...(notSaved.length
      ? [
          t(
            'Saving failed: {0}. The line is changed in the editor, and not on the disk: save it there.',
            named(notSaved),
          ),
        ]
      : []),
  ];
}

const backWords = (edits: readonly PlaceEdit[]): string[] => {
  const lines = linesOf(edits);
  return lines
    ? [vscode.l10n.t('Lines of layouts that place the picture again: {0} ({1}).', lines, filesOf(edits))]
    : [];
};

/** What came of taking a conversion back that wrote beside the pictures. */
export function takenBackWords(
  { left, ...lines }: Changed<PlaceEdit> & { left: LeftAlone[] },
  gone: { removed: string[]; left: LeftAlone[] },
): string {
  const t = vscode.l10n.t;
  const { removed } = gone;
  const parts = [
    // the editor shows the beginning alone: what is not as it was asked comes first
    ...firstReasons(gone.left),
    ...firstReasons(left),
    ...(removed.length ? [t('Taken away, since still as it was written: {0}.', named(removed))] : []),
    ...backWords(lines.edits),
    ...toSave(lines),
  ];
  return parts.join(' ') || t('It is undone already.');
}

/** @param saving what lines that were changed left to be saved */
export function undoWords(
  { restored, skipped, failed, relinking, stopped }: UndoAnswer,
  saving?: ToSave,
): string {
  const t = vscode.l10n.t;
  const edits = relinking?.edits ?? [];
  const lines = relinking ? [...backWords(edits), ...reasons(relinking.left)] : [];
  if (!restored.length && !failed.length && !stopped && lines.length) {
    const results = edits.length ? [t('The results themselves stay beside the pictures.')] : [];
    return [...lines, ...toSave(saving), ...results].join(' ');
  }
  const head =
    restored.length === 1
      ? t('{0} is the original again, bit for bit.', path.posix.basename(restored[0]))
      : restored.length
        ? t('{0} originals are back, bit for bit.', restored.length)
        : t('Nothing was undone.');
  const why = stopped ? [stopped] : reasons(failed.length ? failed : restored.length ? [] : skipped);
  if (!restored.length && !why.length)
    why.push(t('No picture here was converted in place, and no layout was made to place a result.'));
  return [head, ...why, ...lines, ...toSave(saving)].join(' ');
}

const counts = (parts: [count: number, words: string][]) => {
  const some = parts.filter(([count]) => count > 0).map(([, words]) => words);
  return some.length ? `${some.join(', ')}.` : vscode.l10n.t('There was no picture to convert.');
};

const reasonOf = ({ path: at, reason }: LeftAlone): string => `${at}: ${reason}`;

/** Where there is no report that has them all. */
export function firstReasons(left: readonly LeftAlone[]): string[] {
  const words = left.slice(0, NAMED).map(reasonOf);
  return left.length > NAMED ? [...words, vscode.l10n.t('{0} more were left.', left.length - NAMED)] : words;
}

/** The first by its name; the report has them all. */
function reasons(left: readonly LeftAlone[]): string[] {
  if (!left.length) return [];
  const words = reasonOf(left[0]);
  return left.length === 1 ? [words] : [vscode.l10n.t('{0} The others are in the report.', words)];
}
