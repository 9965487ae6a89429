import assert from 'node:assert/strict';
import { rules } from '../../../src/rules';
import { golden } from '../support/golden';
import { evengrey } from '../support/run';

describe('evengrey explain', () => {
  it('lists every rule', async () => {
    const ran = await evengrey(['explain']);
    golden('explain/list.txt', ran.stdout);
    for (const { id } of rules) assert.match(ran.stdout, new RegExp(`^${id} `, 'm'));
    const { rules: listed } = JSON.parse((await evengrey(['explain', '--format', 'json'])).stdout);
    assert.equal(listed.length, rules.length);
  });

  it('shows which encoding to send to which process, computed', async () => {
    const ran = await evengrey(['explain', 'encodings']);
    golden('explain/encodings.txt', ran.stdout);
    const { advice } = JSON.parse((await evengrey(['explain', 'encodings', '--format', 'json'])).stdout);
    assert.ok(advice.length > 80);
    assert.deepEqual(Object.keys(advice[0]).slice(0, 4), ['process', 'paper', 'encoding', 'verdict']);
  });

  it('shows what the settings can say', async () => {
    const ran = await evengrey(['explain', 'settings']);
    golden('explain/settings.txt', ran.stdout);
    const { settings } = JSON.parse((await evengrey(['explain', 'settings', '--format', 'json'])).stdout);
    assert.deepEqual(Object.keys(settings), ['page', 'schema', 'houseSchema']);
  });

  it('shows a rule’s page', async () => {
    const ran = await evengrey(['explain', 'untagged']);
    golden('explain/untagged.txt', ran.stdout);
    const { rule } = JSON.parse((await evengrey(['explain', 'untagged', '--format', 'json'])).stdout);
    assert.equal(rule.id, 'untagged');
    assert.match(rule.page, /^# untagged/);
  });
});
