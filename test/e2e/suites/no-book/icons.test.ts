import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { extension, problems, sleep } from '../../editor';
import { ourProcesses } from '../../processes';

describe('three hundred icons, and nobody’s book', () => {
  it('says nothing and starts no process', async () => {
    await extension().activate();
    assert.equal((await vscode.workspace.findFiles('icons/*.png')).length, 300);
    await sleep(1500);
    assert.deepEqual(problems(), []);
    assert.deepEqual(ourProcesses(), []);
  });

  it('still says nothing when a check is asked for, but what to do', async () => {
    // the notification stays open until somebody answers it: do not wait for it
    await vscode.commands.executeCommand('evengrey.check');
    assert.deepEqual(problems(), []);
    assert.deepEqual(ourProcesses(), []);
  });
});
