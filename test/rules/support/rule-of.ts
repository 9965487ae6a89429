import assert from 'node:assert/strict';
import { type Rule, rules } from '../../../src/rules';

export function ruleOf(id: string): Rule {
  const rule = rules.find(r => r.id === id);
  assert.ok(rule, `${id} is in the index`);
  return rule;
}
