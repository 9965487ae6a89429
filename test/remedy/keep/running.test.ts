import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { isRunning, startOf } from '../../../src/remedy/keep/running';

describe('running processes', () => {
  it('are told from those that are gone', () => {
    assert.ok(isRunning(process.pid));
    assert.ok(!isRunning(spawnSync('true').pid));
  });

  it('have a start of their own where the system tells it', () => {
    if (process.platform !== 'linux') return assert.equal(startOf(process.pid), null);
    assert.match(startOf(process.pid)!, /^\d+$/);
    assert.notEqual(startOf(process.pid), startOf(1));
    assert.equal(startOf(spawnSync('true').pid), null);
  });
});
