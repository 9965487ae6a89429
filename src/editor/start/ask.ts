// no-unit-test: it lives in VS Code; test/e2e/suites/start tests it there
import * as vscode from 'vscode';
import type { FirstAnswers, FirstChoices } from '../../shared/first-settings';
import type { LightId, PaperId, ProcessId } from '../../shared/target';
import { type Option, pick } from '../convert/pick';

type Way = 'on' | 'back' | 'end';

/**
 * Who prints the book, how, on what, and under which light it will be seen, each with a way back; undefined where the
 * person gave up. Without a process neither paper nor light is asked for: they would say nothing.
 */
export async function askFirst(
  folder: string,
  { processes, lights }: FirstChoices,
): Promise<FirstAnswers | undefined> {
  const t = vscode.l10n.t;
  const title = t('First settings of {0}', folder);
  const said: FirstAnswers = { house: '', process: processes[0].id, paper: null, light: lights[0].id };
  const asked = <T>(step: number, placeholder: string, chosen: T | null, options: Option<T>[]) =>
    pick<T>({ ...{ title, placeholder, options, step, steps: STEPS }, chosen: chosen as T });
  const steps = [
    () => askHouse(title, said),
    async () =>
      taken(
        await asked<ProcessId | null>(2, t('By which process is it printed?'), said.process, [
          ...processes.map(option),
          {
            value: null,
            label: t('I do not know yet'),
            detail: t('What the files cause is found all the same; forecasts wait for the process.'),
          },
        ]),
        value => {
          if (value !== said.process) said.paper = null;
          said.process = value;
        },
      ),
    async () =>
      taken(
        await asked<PaperId>(
          3,
          t('On what paper?'),
          said.paper,
          processes.find(({ id }) => id === said.process)!.papers.map(withUsual),
        ),
        value => (said.paper = value),
      ),
    async () =>
      taken(
        await asked<LightId>(4, t('Under which light will it be looked at?'), said.light, lights.map(option)),
        value => (said.light = value),
      ),
  ];
  for (let at = 0; at < (said.process ? steps.length : 2); ) {
    const way = await steps[at]();
    if (way === 'end') return;
    at += way === 'on' ? 1 : -1;
  }
  return said;
}

const STEPS = 4;

function taken<T>(answer: { value: T } | 'back' | undefined, take: (value: T) => void): Way {
  if (!answer) return 'end';
  if (answer === 'back') return 'back';
  take(answer.value);
  return 'on';
}

const option = <Id>({ id, name, detail }: { id: Id; name: string; detail: string }): Option<Id> => ({
  value: id,
  label: name,
  detail,
});

const withUsual = (paper: { id: PaperId; name: string; detail: string }, at: number): Option<PaperId> => ({
  ...option(paper),
  description: at === 0 ? vscode.l10n.t('the usual one') : undefined,
});

function askHouse(title: string, said: FirstAnswers): Promise<Way> {
  const t = vscode.l10n.t;
  return new Promise(resolve => {
    const input = vscode.window.createInputBox();
    input.title = title;
    input.prompt = t('Who prints it? A name for yourself; leave it empty if you like.');
    input.value = said.house;
    input.step = 1;
    input.totalSteps = STEPS;
    input.ignoreFocusOut = true;
    const settle = (way: Way) => {
      resolve(way);
      input.dispose();
    };
    input.onDidAccept(() => {
      said.house = input.value;
      settle('on');
    });
    input.onDidHide(() => settle('end'));
    input.show();
  });
}
