// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { Severity } from '../shared/finding';
import type { ShownFinding } from '../shared/sheet';
import { rulePage } from './rule-pages';

const SOURCE = 'Evengrey';
const severities: Record<Severity, vscode.DiagnosticSeverity> = {
  error: vscode.DiagnosticSeverity.Error,
  warning: vscode.DiagnosticSeverity.Warning,
  // a hint would not be listed
  note: vscode.DiagnosticSeverity.Information,
};

/** Of a file whose text cannot be marked. */
export const atTheTop = new vscode.Range(0, 0, 0, 1);

/**
 * A finding in the Problems panel. The rule's name is a link: on a picture a command; on text, where the editor's own
 * hover follows no command link, the address of the rule's page.
 */
export function findingDiagnostic(
  { rule, severity, message }: ShownFinding,
  range: vscode.Range,
  on: 'picture' | 'text',
): vscode.Diagnostic {
  const diagnostic = plainDiagnostic(range, message, severities[severity]);
  diagnostic.code = { value: rule, target: on === 'picture' ? explainLink(rule) : rulePage(rule) };
  return diagnostic;
}

/** What is told by no rule. */
export function plainDiagnostic(
  range: vscode.Range,
  message: string,
  severity: vscode.DiagnosticSeverity,
): vscode.Diagnostic {
  const diagnostic = new vscode.Diagnostic(range, message, severity);
  diagnostic.source = SOURCE;
  return diagnostic;
}

/** The rule that one of our diagnostics is about. */
export function ruleOf({ source, code }: vscode.Diagnostic): string | undefined {
  return source === SOURCE && typeof code === 'object' ? String(code.value) : undefined;
}

/** A picture that a diagnostic is about; a click on its row opens it. */
export const related = (picture: vscode.Uri, words: string): vscode.DiagnosticRelatedInformation =>
  new vscode.DiagnosticRelatedInformation(new vscode.Location(picture, new vscode.Position(0, 0)), words);

/** Rule names need no escaping, which would be undone once too often on the way. */
const explainLink = (rule: string) => vscode.Uri.parse(`command:evengrey.explainRule?["${rule}"]`);
