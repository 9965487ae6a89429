import * as vscode from 'vscode';

/** What a test does to the VS Code window, and what it reads there, as a user would. See bridge.mjs. */
async function ask<T>(operation: string, body: object): Promise<T> {
  const response = await fetch(`${process.env.E2E_BRIDGE_URL}/${operation}`, {
    method: 'POST',
    body: JSON.stringify(body),
  });
  const answer = (await response.json()) as { result: T; error?: string };
  if (answer.error) throw new Error(answer.error);
  return answer.result;
}

export const screenshot = (name: string, size: { width?: number; height?: number } = {}) =>
  ask<string>('screenshot', { name, ...size });

/** Text of a webview's element, once it matches; a regular expression's source is sent, flags are not. */
export const webviewText = (selector: string, until = /./) =>
  ask<string>('webviewText', { selector, until: until.source });
export const webviewCount = (selector: string) => ask<number>('webviewCount', { selector });
export const webviewClick = (
  selector: string,
  how: { modifiers?: ('Shift' | 'Control')[]; clickCount?: number } = {},
) => ask<void>('webviewClick', { selector, how });
/** What an accessibility scan says against the page with that element: the serious and the critical. */
export const webviewAxe = async (selector: string) => {
  const all = await ask<{ id: string; impact: string; help: string; nodes: string[] }[]>('webviewAxe', {
    selector,
  });
  return all.filter(({ impact }) => impact === 'serious' || impact === 'critical');
};
export const webviewSelect = (selector: string, value: string) =>
  ask<void>('webviewSelect', { selector, value });
export const webviewEval = <T>(selector: string, expression: string) =>
  ask<T>('webviewEval', { selector, expression });

export const workbenchText = (selector: string, until = /./) =>
  ask<string>('workbenchText', { selector, until: until.source });
export const workbenchClick = (selector: string, text?: string) =>
  ask<void>('workbenchClick', { selector, text });
/** Text of a message, once it matches. */
export const messageText = (until = /./): Promise<string> =>
  amongMessages(8000, (among, within) =>
    ask('workbenchText', { selector: among, until: until.source, within }),
  );
/** Presses a button of a message, which goes by that. */
export const toastPress = (text: string): Promise<void> =>
  amongMessages(8000, (among, within) => ask('toastPress', { text, among, within }));

/** Among those that show themselves, for so many ms, else, as who missed one would, in the list of all. */
async function amongMessages<T>(
  within: number,
  look: (among: string, within: number) => Promise<T>,
): Promise<T> {
  try {
    return await look('.notification-toast', within);
  } catch (error) {
    await vscode.commands.executeCommand('notifications.showList');
    try {
      return await look('.notifications-center', 12_000);
    } catch (inList) {
      throw new Error(`${(error as Error).message}; ${(inList as Error).message}`);
    } finally {
      await vscode.commands.executeCommand('notifications.hideList');
    }
  }
}
export const workbenchHover = (selector: string, text?: string) =>
  ask<void>('workbenchHover', { selector, text });
export const workbenchEval = <T>(selector: string, expression: string) =>
  ask<T>('workbenchEval', { selector, expression });
export const press = (key: string) => ask<void>('press', { key });
export const type = (text: string) => ask<void>('type', { text });
/** Opens the menu of what is there. */
export const workbenchMenu = (selector: string, text?: string) =>
  ask<void>('workbenchMenu', { selector, text });
/** Drags from the middle of a webview's element, in pixels. */
export const webviewDrag = (selector: string, dx: number, dy: number) =>
  ask<void>('webviewDrag', { selector, dx, dy });
/** Points at a place of a webview's element, pixels from its upper left; `wheel`: turned there, `ctrl` held. */
export const webviewPoint = (
  selector: string,
  at: { x: number; y: number; wheel?: number; ctrl?: boolean },
) => ask<void>('webviewPoint', { selector, ...at });
