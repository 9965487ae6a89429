// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Where } from '../../shared/checker-protocol';
import type { Made, Remedies } from '../../shared/remedies';
import { type Entry, type Option, pick } from './pick';

export interface Asked extends Made {
  where: Where;
}

type Place = 'beside' | 'relink' | 'folder' | 'in-place';

/**
 * What to make of pictures, how, and where, each with a way back; undefined where the person gave up.
 * @param subject the pictures in words
 * @param chosen what was chosen elsewhere already: only the place is asked for then
 * @param inBook whether there are layouts that could place the results
 */
export async function askHow(
  subject: string,
  remedies: Remedies,
  chosen: Made | null,
  inBook: boolean,
): Promise<Asked | undefined> {
  let to = chosen?.to ?? remedies.recommended.to;
  let method = chosen?.method ?? remedies.methods[0].id;
  const t = vscode.l10n.t;
  const steps = chosen ? 1 : 3;
  for (let step = 1; ; ) {
    const at = chosen ? 3 : step;
    const common = { title: t('Convert {0}', subject), step, steps };
    if (at === 1) {
      const answer = await pick({
        ...common,
        placeholder: t('What to make of it?'),
        options: encodingOptions(remedies),
        chosen: to,
      });
      if (!answer || answer === 'back') return;
      to = answer.value;
      step++;
    } else if (at === 2) {
      const answer = await pick({
        ...common,
        placeholder: t('How colour becomes grey? What is grey already keeps its tones in any way.'),
        options: methodOptions(remedies),
        chosen: method,
      });
      if (!answer) return;
      if (answer === 'back') step--;
      else {
        method = answer.value;
        step++;
      }
    } else {
      const answer = await pick({
        ...common,
        placeholder: t('Where does the result go?'),
        options: placeOptions(inBook),
      });
      if (!answer) return;
      if (answer === 'back') step--;
      else {
        const where = await whereOf(answer.value);
        if (where) return { to, method, where };
      }
    }
  }
}

function encodingOptions({ encodings, recommended }: Remedies): Entry<Made['to']>[] {
  const options = encodings.map(({ id, name, does }) => ({
    value: id,
    label: name,
    description: id,
    detail: does,
  }));
  const isRecommended = ({ value }: Option<Made['to']>) => value === recommended.to;
  const heading = (label: string) => ({ label, kind: vscode.QuickPickItemKind.Separator as const });
  return [
    heading(vscode.l10n.t('recommended: {0}', recommended.why)),
    ...options.filter(isRecommended),
    heading(vscode.l10n.t('others')),
    ...options.filter(option => !isRecommended(option)),
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
