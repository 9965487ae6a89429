// no-unit-test: it lives in VS Code; test/e2e/suites/ tests it there
import * as vscode from 'vscode';
import type { TextRange } from '../../shared/layout-places';

export const rangeOf = ({ start, end }: TextRange): vscode.Range =>
  new vscode.Range(start.line, start.column, end.line, end.column);
