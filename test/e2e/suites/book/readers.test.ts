import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import path from 'node:path';
import * as vscode from 'vscode';
import { bookRead, inWorkspace, problems, rulesOn, spare, until } from '../../editor';
import { ourProcesses, readers } from '../../processes';
import { workbenchText } from '../../window';

const LARGE = Array.from({ length: 8 }, (_, i) => inWorkspace(`pictures/large-${i}.jpg`));

describe('processes that die in the middle of a check', () => {
  before(bookRead);
  afterEach(async () => {
    for (const file of LARGE) await fs.rm(file.fsPath, { force: true });
    await until('them gone', largeProblems, found => found.length === 0);
  });

  /** Every file with a content of its own, or the cache would know it. */
  async function addLargePictures(salt: string) {
    const bytes = await fs.readFile(path.join(spare(), 'large.jpg'));
    for (const [i, file] of LARGE.entries())
      await fs.writeFile(file.fsPath, Buffer.concat([bytes, Buffer.from(`${salt}${i}`)]));
  }
  const largeProblems = () => problems().filter(({ file }) => file.includes('large-'));

  it('are readers: the book is checked to its end all the same', async () => {
    await addLargePictures('readers');
    const killed = await until('readers', readers, list => list.length > 0);
    for (const { pid } of killed) process.kill(pid, 'SIGKILL');
    await vscode.commands.executeCommand('evengrey.check');
    assert.deepEqual(
      largeProblems().filter(({ diagnostic }) => /crash|ended/.test(diagnostic.message)),
      [],
    );
    assert.ok(rulesOn('pictures/plate-7.tif').includes('encoding-not-accepted'));
    await workbenchText('.statusbar', /to put right/);
  });

  it('is the checker: another one takes over', async () => {
    await addLargePictures('checker');
    await until('readers', readers, list => list.length > 0);
    const [checker] = ourProcesses().filter(({ command }) => command.includes('checker.js'));
    process.kill(checker.pid, 'SIGKILL');
    await vscode.commands.executeCommand('evengrey.check');
    const now = ourProcesses().filter(({ command }) => command.includes('checker.js'));
    assert.ok(now.length === 1 && now[0].pid !== checker.pid, JSON.stringify(now));
    assert.ok(rulesOn('pictures/plate-7.tif').includes('encoding-not-accepted'));
  });

  it('are readers at rest: from the next check on one stands by, though there is nothing to read', async () => {
    const before = readers();
    for (const { pid } of before) process.kill(pid, 'SIGKILL');
    await until('no reader', readers, list => !list.some(({ pid }) => before.some(dead => dead.pid === pid)));
    await vscode.commands.executeCommand('evengrey.check');
    await until('a reader', readers, list => list.length > 0);
  });

  it('leave no reader behind', async () => {
    const parents = new Set(ourProcesses().map(({ pid }) => pid));
    assert.ok(readers().every(({ parent }) => parents.has(parent)));
  });
});
