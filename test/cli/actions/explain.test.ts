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

  it('shows a rule’s page', async () => {
    const ran = await evengrey(['explain', 'untagged']);
    golden('explain/untagged.txt', ran.stdout);
    const { rule } = JSON.parse((await evengrey(['explain', 'untagged', '--format', 'json'])).stdout);
    assert.equal(rule.id, 'untagged');
    assert.match(rule.page, /^# untagged/);
  });
});
