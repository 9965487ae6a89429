// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { ConvertAnswer, UndoAnswer } from '../../shared/checker-protocol';
import type { RelinkEdit } from '../../shared/layout-places';
import type { Made } from '../../shared/remedies';
import type { Book } from '../book';
import type { Books } from '../books';
import { Cancelled, type CheckerClient } from '../checker-client';
import { increments } from '../increments';
import { openTexts, openTextsThatName } from '../layout/open-texts';
import { relink, type ToSave } from '../layout/relink';
import { pictureInFront } from '../picture-in-front';
import { type Asked, askHow } from './ask';
import { registerReports, SHOW_REPORT } from './report';
import { convertWords, nothingToConvert, subjectOf, type Told, takenBackWords, undoWords } from './words';

/**
 * The commands that write pictures, and the one that takes it back. They are for a person to run: nothing is converted
 * by itself. The work is the checker's; here is only asked and told. They wait for trust in the workspace: results go
 * where its links and its repository lead.
 */
export function registerConverting(books: Books, checker: CheckerClient): vscode.Disposable {
  const shownBooks = () =>
    void vscode.commands.executeCommand('setContext', 'evengrey.hasBook', books.all.length > 0);
  shownBooks();
  return vscode.Disposable.from(
    registerReports(),
    books.onDidChange(shownBooks),
    books.onDidRemove(shownBooks),
    vscode.commands.registerCommand('evengrey.convert', async (...named: unknown[]) => {
      const files = filesOf(named);
      if (await mayWrite(files)) return converted(files, chosenIn(named), books, checker);
    }),
    vscode.commands.registerCommand('evengrey.undoConversion', async (...named: unknown[]) => {
      const some = filesOf(named);
      const files = some.length ? some : books.all.map(({ root }) => root);
      if (await mayWrite(files)) return undone(files, books.at(files[0]), true, checker);
    }),
  );
}

/** From the explorer all that are selected, from a button the picture itself, from the palette the one in front. */
function filesOf([uri, selected]: unknown[]): vscode.Uri[] {
  const isUri = (value: unknown): value is vscode.Uri => value instanceof vscode.Uri;
  if (Array.isArray(selected) && selected.some(isUri)) return selected.filter(isUri);
  const file = isUri(uri) ? uri : pictureInFront();
  return file ? [file] : [];
}

/** What the preview has chosen already. */
function chosenIn([, , chosen]: unknown[]): Made | null {
  const { to, method } = (chosen ?? {}) as Partial<Made>;
  return to && method ? { to, method } : null;
}

/** Whether pictures may be converted; why not is told. */
export async function mayWrite(files: readonly vscode.Uri[]): Promise<boolean> {
  const t = vscode.l10n.t;
  if (!files.length)
    void vscode.window.showInformationMessage(
      t('Open a picture first, or choose pictures or folders in the explorer.'),
    );
  else if (files.some(({ scheme }) => scheme !== 'file'))
    void vscode.window.showInformationMessage(t('Only pictures on a disk can be converted.'));
  else if (!vscode.workspace.isTrusted)
    void vscode.window.showInformationMessage(
      t(
        'Pictures are converted once you trust this workspace: results go where its links and its repository lead.',
      ),
    );
  else return true;
  return false;
}

/** Resolves with the answer; undefined where it was given up, or failed, which is told. */
async function converted(
  files: readonly vscode.Uri[],
  chosen: Made | null,
  books: Books,
  checker: CheckerClient,
): Promise<ConvertAnswer | undefined> {
  const book = books.at(files[0]);
  return told(async () => {
    const root = book?.root.fsPath ?? null;
    const named = files.map(({ fsPath }) => fsPath);
    const { paths, left, unmeant, coloured } = await checker.ask('convertible', { root, paths: named });
    if (!paths.length) throw new Error(nothingToConvert(left));
    const remedies = await checker.ask('remedies', { file: paths[0], root });
    const some = paths.map(file => vscode.Uri.file(file));
    const among = { inBook: book !== undefined, unmeant, coloured };
    const asked = await askHow(subjectOf(some, left), remedies, chosen, among);
    if (!asked) return;
    // one that was chosen by itself is meant
    const spares = asked.spares && files.length > 1;
    return carryOut(some, { ...asked, spares }, book, checker, { left });
  });
}

/**
 * Converts as it was asked, has the layouts of the book place the results where that is wanted, and tells what came of it.
 * @param others what was chosen too and was left out
 */
export async function carryOut(
  files: readonly vscode.Uri[],
  asked: Asked,
  book: Book | undefined,
  checker: CheckerClient,
  others: Omit<Told, 'saving'> = {},
): Promise<ConvertAnswer> {
  const paths = files.map(({ fsPath }) => fsPath);
  // of many the progress itself says how many: fewer, where some need nothing
  const title =
    files.length === 1 ? vscode.l10n.t('Converting {0}', subjectOf(files)) : vscode.l10n.t('Converting');
  const convert = () =>
    working(title, (signal, onProgress) => {
      const open = book ? openTextsThatName(book) : [];
      return checker.ask('convert', { ...asked, paths, open }, { signal, onProgress });
    });
  const answer = await convert();
  // what stands already is not made again: then only the lines are looked for in the text as it is now
  const lines = async () => (await convert()).relinking?.edits ?? [];
  const { relinking } = answer;
  let saving: ToSave | undefined;
  if (book && relinking) {
    const changed = await relink(book.root, relinking.edits, lines);
    saving = changed;
    relinking.edits = changed.edits;
    if (changed.edits.length) await checker.ask('relinked', { root: book.root.fsPath, lines: changed.edits });
  }
  const written = answer.converted.map(({ output }) => vscode.Uri.file(output));
  const undo = () =>
    asked.where.kind === 'in-place'
      ? undone(written, book, false, checker)
      : takenBack(answer, book, checker);
  void tellConverted(answer, { ...others, saving }, undo);
  return answer;
}

/**
 * Has the lines that were relinked place the pictures again, and takes the results away that nobody worked on since and
 * that no line places.
 */
function takenBack({ converted, relinking }: ConvertAnswer, book: Book | undefined, checker: CheckerClient) {
  return told(async () => {
    const results = converted.map(({ output }) => output);
    const lines = await linesBack(book, relinking?.edits ?? [], checker);
    const root = book?.root ?? folderAround(vscode.Uri.file(results[0]));
    const gone = await checker.ask('unmake', { root: root.fsPath, results, open: openTexts(root) });
    const words = takenBackWords(lines, gone);
    const isPartial = lines.left.length + gone.left.length + lines.notSaved.length > 0;
    void vscode.window[isPartial ? 'showWarningMessage' : 'showInformationMessage'](words);
  });
}

/** Where layouts of a picture are looked for that is in no book. */
const folderAround = (file: vscode.Uri): vscode.Uri =>
  vscode.workspace.getWorkspaceFolder(file)?.uri ?? vscode.Uri.joinPath(file, '..');

async function linesBack(book: Book | undefined, relinked: readonly RelinkEdit[], checker: CheckerClient) {
  if (!book || !relinked.length) return { edits: [], unsaved: [], notSaved: [], left: [] };
  const names = [...new Set(relinked.map(({ result }) => result))];
  const results = names.map(name => vscode.Uri.joinPath(book.root, name).fsPath);
  const ask = () =>
    checker.ask('unplace', { root: book.root.fsPath, results, open: openTextsThatName(book) });
  const { edits, left } = await ask();
  return { ...(await relink(book.root, edits, async () => (await ask()).edits)), left };
}

/**
 * Brings back what conversions in place replaced.
 * @param lines whether layouts are to place the pictures again whose results they were made to place
 */
function undone(
  files: readonly vscode.Uri[],
  book: Book | undefined,
  lines: boolean,
  checker: CheckerClient,
): Promise<UndoAnswer | undefined> {
  return told(async () => {
    const title = vscode.l10n.t('Bringing originals back');
    const paths = files.map(({ fsPath }) => fsPath);
    const undo = () =>
      working(title, (signal, onProgress) => {
        const open = book ? openTextsThatName(book) : [];
        return checker.ask('undo', { paths, open, lines }, { signal, onProgress });
      });
    const answer = await undo();
    let saving: ToSave | undefined;
    if (book && answer.relinking) {
      const again = async () => (await undo()).relinking?.edits ?? [];
      const changed = await relink(book.root, answer.relinking.edits, again);
      saving = changed;
      answer.relinking.edits = changed.edits;
    }
    void tell(answer, undoWords(answer, saving), [], Boolean(saving?.notSaved.length));
    return answer;
  });
}

function working<T>(
  title: string,
  work: (signal: AbortSignal, onProgress: ReturnType<typeof increments>) => Promise<T>,
): Promise<T> {
  const location = vscode.ProgressLocation.Notification;
  return Promise.resolve(
    vscode.window.withProgress({ location, title, cancellable: true }, async (progress, token) => {
      const cancel = new AbortController();
      token.onCancellationRequested(() => cancel.abort());
      return work(cancel.signal, increments(progress));
    }),
  );
}

/** Work whose failure is told by its name. */
export async function told<T>(work: () => Promise<T>): Promise<T | undefined> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof Cancelled)
      void vscode.window.showInformationMessage(
        vscode.l10n.t('Stopped. Every picture is whole, and what was converted stands.'),
      );
    else void vscode.window.showErrorMessage((error as Error).message);
    return undefined;
  }
}

interface Action {
  title: string;
  run(): unknown;
  /** It only shows something: what else was offered stays on offer. */
  shows?: true;
}

function tellConverted(answer: ConvertAnswer, told: Told, undo: () => unknown): Promise<void> {
  const { converted, relinking } = answer;
  const actions: Action[] = [];
  if (converted.length === 1)
    actions.push({
      title: vscode.l10n.t('Open the result'),
      run: () => vscode.commands.executeCommand('evengrey.openPreview', vscode.Uri.file(converted[0].output)),
      shows: true,
    });
  if (converted.length) actions.push({ title: vscode.l10n.t('Undo'), run: undo });
  return tell(
    answer,
    convertWords(answer, told),
    actions,
    Boolean(relinking?.left.length || told.saving?.unsaved.length || told.saving?.notSaved.length),
  );
}

/** What came of it, with the whole report on request. */
async function tell(
  { failed, stopped, report }: ConvertAnswer | UndoAnswer,
  words: string,
  actions: readonly Action[],
  isPartial = false,
): Promise<void> {
  const show = { title: vscode.l10n.t('Show the report'), shows: true as const };
  const run = () => vscode.commands.executeCommand(SHOW_REPORT, report);
  const isWarning = failed.length > 0 || stopped !== null || isPartial;
  await offer(isWarning ? 'showWarningMessage' : 'showInformationMessage', words, [
    ...actions,
    { ...show, run },
  ]);
}

/** A message goes with the first button that is pressed: it comes back where that was only to look at something. */
async function offer(
  as: 'showWarningMessage' | 'showInformationMessage',
  words: string,
  actions: readonly Action[],
): Promise<void> {
  const title = await vscode.window[as](words, ...actions.map(action => action.title));
  const chosen = actions.find(action => action.title === title);
  await chosen?.run();
  const others = actions.filter(action => action !== chosen);
  if (chosen?.shows && others.length) await offer(as, words, others);
}
