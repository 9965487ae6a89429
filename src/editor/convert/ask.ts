// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Unmeant, Where } from '../../shared/checker-protocol';
import type { Made, Remedies } from '../../shared/remedies';
import { type Entry, type Option, pick } from './pick';
import { lossWords, namesOf } from './words';

export interface Asked extends Made {
  where: Where;
  /** What nobody said is to be grey stays as it is. */
  spares: boolean;
}

/** What is known of the pictures before anything is asked. */
interface Subject {
  /** Whether there are layouts that could place the results. */
  inBook: boolean;
  /** Those of which is asked whether they are to be grey at all. */
  unmeant: readonly Unmeant[];
  /** Whether any has colour that a way to grey could do something with, as far as anybody knows. */
  coloured: boolean;
}

type Question = 'encoding' | 'unmeant' | 'method' | 'place';
type Place = 'beside' | 'relink' | 'folder' | 'in-place';

/**
 * What to make of pictures, how, and where, each with a way back; undefined where the person gave up.
 * @param subject the pictures in words
 * @param chosen what was chosen elsewhere already: only the place is asked for then
 */
export async function askHow(
  subject: string,
  remedies: Remedies,
  chosen: Made | null,
  { inBook, unmeant, coloured }: Subject,
): Promise<Asked | undefined> {
  const answer = {
    to: chosen?.to ?? remedies.recommended.to,
    method: chosen?.method ?? remedies.methods[0].id,
    spares: true,
  };
  const t = vscode.l10n.t;
  for (let at = 0; ; ) {
    // a tone that is made even is not lost
    const losing = unmeant.filter(({ loses }) => loses !== 'tone' || answer.to !== 'rgb-toned');
    const questions: Question[] = chosen
      ? ['place']
      : [
          'encoding',
          ...(losing.length ? ['unmeant' as const] : []),
          ...(coloured ? ['method' as const] : []),
          'place',
        ];
    const common = { title: t('Convert {0}', subject), step: at + 1, steps: questions.length };
    const ask = async (): Promise<boolean | 'back' | Where> => {
      switch (questions[at]) {
        case 'encoding':
          return settled(
            await pick({
              ...common,
              placeholder: t('What to make of it?'),
              options: encodingOptions(remedies),
              chosen: answer.to,
            }),
            to => (answer.to = to),
          );
        case 'unmeant':
          return settled(
            await pick({
              ...common,
              placeholder: t('Nobody said that these are to be grey: {0}.', namesOf(losing)),
              options: sparingOptions(losing),
              chosen: answer.spares,
            }),
            spares => (answer.spares = spares),
          );
        case 'method':
          return settled(
            await pick({
              ...common,
              placeholder: t('How colour becomes grey? What is grey already keeps its tones in any way.'),
              options: methodOptions(remedies),
              chosen: answer.method,
            }),
            method => (answer.method = method),
          );
        case 'place': {
          const place = await pick({
            ...common,
            placeholder: t('Where does the result go?'),
            options: placeOptions(inBook),
          });
          if (!place || place === 'back') return place ?? false;
          return (await whereOf(place.value)) ?? true;
        }
      }
    };
    const next = await ask();
    if (next === false || (next === 'back' && at === 0)) return;
    if (next === 'back') at--;
    else if (next === true) at = Math.min(at + 1, questions.length - 1);
    else {
      return { ...answer, where: next };
    }
  }
}

/** Keeps what was picked; whether the next question may follow, or the one before. */
function settled<T>(picked: { value: T } | 'back' | undefined, keep: (value: T) => void): boolean | 'back' {
  if (!picked || picked === 'back') return picked ?? false;
  keep(picked.value);
  return true;
}

/** What is not asked for stays: that comes first. */
function sparingOptions(losing: readonly Unmeant[]): Option<boolean>[] {
  const t = vscode.l10n.t;
  return [
    { value: true, label: t('Leave them as they are'), detail: lossWords(losing) },
    {
      value: false,
      label: t('Make them grey too'),
      detail: t('Their colour, tone or sharp edges are gone from the results.'),
    },
  ];
}

function encodingOptions({ encodings, recommended }: Remedies): Entry<Made['to']>[] {
  const t = vscode.l10n.t;
  const isRecommended = (id: Made['to']) => id === recommended.to;
  const options = encodings.map(({ id, name, does }) => ({
    value: id,
    label: name,
    description: isRecommended(id) ? t('{0}, recommended', id) : id,
    detail: isRecommended(id) ? t('Recommended: {0}.', recommended.why) : does,
  }));
  return [
    ...options.filter(({ value }) => isRecommended(value)),
    { label: t('others'), kind: vscode.QuickPickItemKind.Separator as const },
    ...options.filter(({ value }) => !isRecommended(value)),
  ];
}

const methodOptions = ({ methods }: Remedies): Option<string>[] =>
  methods.map(({ id, name, does }, i) => ({
    value: id,
    label: name,
    description: i === 0 ? vscode.l10n.t('the usual choice') : undefined,
    detail: does,
  }));

function placeOptions(inBook: boolean): Option<Place>[] {
  const t = vscode.l10n.t;
  return [
    {
      value: 'beside',
      label: t('Beside the picture'),
      detail: t('A new file with the encoding in its name. The picture itself stays as it is.'),
    },
    ...(inBook
      ? [
          {
            value: 'relink' as const,
            label: t('Beside the picture, and the layouts place the result'),
            detail: t(
              "The lines of the book's layouts that place the picture name the new file from then on.",
            ),
          },
        ]
      : []),
    {
      value: 'folder',
      label: t('Into a folder...'),
      detail: t('Names and folders stay as they are in the book. The pictures themselves stay as they are.'),
    },
    {
      value: 'in-place',
      label: t('In place, with the original kept'),
      detail: t(
        'The result takes the picture\'s name. "Undo Conversion" brings the original back, bit for bit.',
      ),
    },
  ];
}

async function whereOf(place: Place): Promise<Where | undefined> {
  switch (place) {
    case 'beside':
    case 'relink':
      return { kind: 'beside', relink: place === 'relink' };
    case 'in-place':
      return { kind: 'in-place' };
    case 'folder': {
      const [folder] =
        (await vscode.window.showOpenDialog({
          canSelectFiles: false,
          canSelectFolders: true,
          title: vscode.l10n.t('Folder for the results'),
          openLabel: vscode.l10n.t('Write the results here'),
        })) ?? [];
      return folder && { kind: 'folder', folder: folder.fsPath };
    }
  }
}
