// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import { posix } from 'node:path';
import * as vscode from 'vscode';
import type { Place } from '../../shared/layout-places';
import type { RemedyEncoding } from '../../shared/remedy';
import { ruleOf } from '../diagnostics';
import { WAIVE } from '../waive';
import { CONVERT_AND_PLACE, OPEN_PICTURE, pictureId } from './commands';
import type { Layout, LayoutPlaces } from './places';
import { rangeOf } from './ranges';

/**
 * What can be done on a line because of what was found on the picture that it places. By the text as it is, which the
 * diagnostics follow a moment later. Nothing of it is run on saving.
 */
export function quickFixProvider(places: LayoutPlaces): vscode.CodeActionProvider {
  return {
    async provideCodeActions(document, range, { diagnostics }) {
      const layout = await places.of(document);
      if (!layout) return;
      const asked = new Set(diagnostics.map(ruleOf).filter(rule => rule !== undefined));
      const actions = layout.places
        .filter(place => rangeOf(place).intersection(range))
        .flatMap(place => {
          const rules = [...new Set(place.findings.map(({ rule }) => rule))];
          return rules
            .filter(rule => !asked.size || asked.has(rule))
            .flatMap(rule => actionsOn(layout, place, rule, diagnostics));
        });
      return onceEach(actions);
    },
  };
}

function actionsOn(
  layout: Layout,
  place: Place,
  rule: string,
  diagnostics: readonly vscode.Diagnostic[],
): vscode.CodeAction[] {
  const t = vscode.l10n.t;
  const uriOf = (picture: string) => vscode.Uri.joinPath(layout.book.root, picture);
  const action = (title: string, command: string, ...args: unknown[]) => {
    const one = new vscode.CodeAction(title, vscode.CodeActionKind.QuickFix);
    one.command = { title, command, arguments: args };
    one.diagnostics = diagnostics.filter(diagnostic => ruleOf(diagnostic) === rule);
    return one;
  };
  const actions: vscode.CodeAction[] = [];
  const fix = fixOf(place, rule);
  if (fix && place.picture && vscode.workspace.isTrusted) {
    const convert = action(
      t('Convert to {0} and place the result', fix),
      CONVERT_AND_PLACE,
      [uriOf(place.picture)],
      fix,
    );
    convert.isPreferred = true;
    actions.push(convert);
    const alike = alikeIn(layout, rule, fix);
    if (alike.length > 1)
      actions.push(
        action(
          t('Convert all {0} pictures with {1} to {2} and place the results', alike.length, rule, fix),
          CONVERT_AND_PLACE,
          alike.map(uriOf),
          fix,
        ),
      );
  }
  // a note is only for knowing
  const counts = place.findings.some(finding => finding.rule === rule && finding.severity !== 'note');
  if (place.picture && place.isThere && counts)
    actions.push(
      action(
        t('Waive {0} on {1}...', rule, posix.basename(place.picture)),
        WAIVE,
        uriOf(place.picture),
        rule,
      ),
    );
  if (place.picture && place.isThere)
    actions.push(action(t('Open in Evengrey’s preview'), OPEN_PICTURE, pictureId(uriOf(place.picture))));
  actions.push(action(t('Explain {0}', rule), 'evengrey.explainRule', rule));
  return actions;
}

const fixOf = ({ findings }: Place, rule: string): RemedyEncoding | null =>
  findings.find(finding => finding.rule === rule)?.fix ?? null;

/** The pictures of a document that one rule would have converted in the same way. */
const alikeIn = ({ places }: Layout, rule: string, fix: RemedyEncoding): string[] => [
  ...new Set(places.flatMap(place => (fixOf(place, rule) === fix ? (place.picture ?? []) : []))),
];

/** Several findings on one path have most of their ways out in common. */
function onceEach(actions: readonly vscode.CodeAction[]): vscode.CodeAction[] {
  const byTitle = new Map<string, vscode.CodeAction>();
  for (const action of actions) {
    const same = byTitle.get(action.title);
    if (same) same.diagnostics = [...(same.diagnostics ?? []), ...(action.diagnostics ?? [])];
    else byTitle.set(action.title, action);
  }
  return [...byTitle.values()];
}
