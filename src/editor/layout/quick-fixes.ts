// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import { posix } from 'node:path';
import * as vscode from 'vscode';
import type { Place, PlacedFinding } from '../../shared/layout-places';
import type { RemedyEncoding } from '../../shared/remedy';
import { ruleOf } from '../diagnostics';
import { WAIVE } from '../waive';
import { CONVERT_AND_PLACE, LIST_MEANT, OPEN_PICTURE, pictureId } from './commands';
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
          const meant = rules.filter(rule => !asked.size || asked.has(rule));
          return actionsOn(layout, place, meant, diagnostics);
        });
      return onceEach(actions);
    },
  };
}

/** What mends the picture comes first, then what shows it, then what leaves it as it is, and the explanations last. */
function actionsOn(
  layout: Layout,
  place: Place,
  rules: readonly string[],
  diagnostics: readonly vscode.Diagnostic[],
): vscode.CodeAction[] {
  const t = vscode.l10n.t;
  const uriOf = (picture: string) => vscode.Uri.joinPath(layout.book.root, picture);
  const action = (about: readonly string[], title: string, command: string, ...args: unknown[]) => {
    const one = new vscode.CodeAction(title, vscode.CodeActionKind.QuickFix);
    one.command = { title, command, arguments: args };
    one.diagnostics = diagnostics.filter(diagnostic => about.includes(ruleOf(diagnostic) ?? ''));
    return one;
  };
  const instead = place.instead.map(({ picture, to }) => {
    const one = new vscode.CodeAction(t('Place {0} instead', picture), vscode.CodeActionKind.QuickFix);
    one.edit = new vscode.WorkspaceEdit();
    one.edit.replace(layout.uri, rangeOf(place), to);
    one.diagnostics = diagnostics.filter(diagnostic => rules.includes(ruleOf(diagnostic) ?? ''));
    one.isPreferred = place.instead.length === 1;
    return one;
  });
  const { picture } = place;
  const explained = rules.map(rule => action([rule], t('Explain {0}', rule), 'evengrey.explainRule', rule));
  if (!picture) return explained;
  const unsaid = place.findings.filter(({ rule, meant }) => meant && rules.includes(rule));
  const fixes = vscode.workspace.isTrusted ? fixesOf(place, rules) : [];
  const converted = fixes.flatMap((fixed, i) => {
    const { fix, because } = fixed;
    const one = action(because, titleOf(fixed), CONVERT_AND_PLACE, [uriOf(picture)], fix);
    // what may be meant is not taken away by a key
    one.isPreferred = i === 0 && !unsaid.some(({ rule }) => because.includes(rule));
    const alike = alikeIn(layout, because, fix);
    if (alike.length < 2) return [one];
    const all = action(because, titleOfAll(fixed, alike.length), CONVERT_AND_PLACE, alike.map(uriOf), fix);
    return [one, all];
  });
  // the lines that place it go along as they do with any new name
  const renamed = place.findings.flatMap(({ rule, rename }) => {
    if (!rename || !rules.includes(rule)) return [];
    const one = new vscode.CodeAction(
      t('Rename it to {0}', posix.basename(rename)),
      vscode.CodeActionKind.QuickFix,
    );
    one.edit = new vscode.WorkspaceEdit();
    one.edit.renameFile(uriOf(picture), uriOf(rename));
    one.diagnostics = diagnostics.filter(diagnostic => ruleOf(diagnostic) === rule);
    return [one];
  });
  const kept = unsaid.map(({ rule, meant }) =>
    action(
      [rule],
      meant === 'colour'
        ? t('Its colour is meant: list it under "colour" in evengrey.json')
        : t('Its tone is meant: list it under "toned" in evengrey.json'),
      LIST_MEANT,
      uriOf(picture),
      meant,
    ),
  );
  if (!place.isThere) return [...instead, ...explained];
  // a note is only for knowing
  const counting = rules.filter(rule =>
    place.findings.some(finding => finding.rule === rule && finding.severity !== 'note'),
  );
  return [
    ...converted,
    ...renamed,
    ...kept,
    action(rules, t('Show how it prints'), OPEN_PICTURE, pictureId(uriOf(picture))),
    ...counting.map(rule =>
      action([rule], t('Waive {0} on {1}...', rule, posix.basename(picture)), WAIVE, uriOf(picture), rule),
    ),
    ...explained,
  ];
}

function titleOf({ fix, fixAs, formatAlone }: Fix): string {
  const t = vscode.l10n.t;
  if (!fixAs) return t('Convert to {0} and place the result', fix);
  return formatAlone
    ? t('Write it as {0} and place the result', fixAs)
    : t('Convert to {0}, written as {1}, and place the result', fix, fixAs);
}

function titleOfAll({ fix, fixAs, formatAlone, because }: Fix, pictures: number): string {
  const t = vscode.l10n.t;
  const names = because.join(t(' or '));
  return formatAlone
    ? t('Write all {0} pictures with {1} as {2} and place the results', pictures, names, fixAs!)
    : t('Convert all {0} pictures with {1} to {2} and place the results', pictures, names, fix);
}

interface Fix extends Pick<PlacedFinding, 'fixAs' | 'formatAlone'> {
  fix: RemedyEncoding;
  /** Rules that ask for it. */
  because: string[];
}

/** What findings ask to be converted to, each encoding once. */
function fixesOf({ findings }: Place, rules: readonly string[]): Fix[] {
  const fixes: Fix[] = [];
  for (const { rule, fix, fixAs, formatAlone } of findings) {
    if (!fix || !rules.includes(rule)) continue;
    const same = fixes.find(other => other.fix === fix);
    if (!same) fixes.push({ fix, fixAs, formatAlone, because: [rule] });
    else if (!same.because.includes(rule)) same.because.push(rule);
  }
  return fixes;
}

/** The pictures of a document that one of these rules would have converted in the same way. */
const alikeIn = ({ places }: Layout, rules: readonly string[], fix: RemedyEncoding): string[] => [
  ...new Set(
    places.flatMap(place =>
      fixesOf(place, rules).some(other => other.fix === fix) ? (place.picture ?? []) : [],
    ),
  ),
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
