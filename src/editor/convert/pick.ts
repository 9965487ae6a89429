// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';

export interface Option<T> extends vscode.QuickPickItem {
  value: T;
}

/** An option, or a heading over those that follow. */
export type Entry<T> = Option<T> | Heading;
interface Heading {
  label: string;
  kind: vscode.QuickPickItemKind.Separator;
}

const isOption = <T>(entry: Entry<T>): entry is Option<T> => 'value' in entry;

export interface Step<T> {
  title: string;
  placeholder: string;
  options: readonly Entry<T>[];
  /** From 1. */
  step: number;
  steps: number;
  /** The value that was chosen when the step was gone through before. */
  chosen?: T;
}

/** One of several options; `back`: the step before is wanted; undefined: nothing is wanted any more. */
export function pick<T>(step: Step<T>): Promise<{ value: T } | 'back' | undefined> {
  return new Promise(resolve => {
    const input = vscode.window.createQuickPick<Entry<T>>();
    input.title = step.title;
    input.placeholder = step.placeholder;
    if (step.steps > 1) {
      input.step = step.step;
      input.totalSteps = step.steps;
    }
    input.items = step.options;
    input.matchOnDescription = true;
    input.matchOnDetail = true;
    input.ignoreFocusOut = true;
    input.buttons = step.step > 1 ? [vscode.QuickInputButtons.Back] : [];
    const before = step.options.filter(isOption).find(({ value }) => value === step.chosen);
    if (before) input.activeItems = [before];
    input.onDidTriggerButton(() => settle('back'));
    input.onDidAccept(() => {
      const [option] = input.selectedItems;
      if (option && isOption(option)) settle({ value: option.value });
    });
    input.onDidHide(() => settle(undefined));
    input.show();

    function settle(answer: { value: T } | 'back' | undefined) {
      resolve(answer);
      input.dispose();
    }
  });
}
