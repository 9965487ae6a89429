import assert from 'node:assert/strict';
import Ajv from 'ajv';
import { rules } from '../../src/rules';
import { activeRules, type RuleSettings, RuleSettingsError, settingsSchema } from '../../src/rules/settings';

const inkTotal = (settings: RuleSettings) =>
  activeRules(rules, settings).find(({ rule }) => rule.id === 'ink-total');

describe('rule settings', () => {
  it('leave a rule as it is where they say nothing', () => {
    assert.equal(activeRules(rules, {}).length, rules.length);
    assert.equal(inkTotal({})?.severity, 'warning');
    assert.deepEqual(inkTotal({})?.options, { tolerance: 2 });
  });
  it('switch a rule off, change its severity, set its options', () => {
    assert.equal(inkTotal({ 'ink-total': 'off' }), undefined);
    assert.equal(inkTotal({ 'ink-total': 'error' })?.severity, 'error');
    const given: RuleSettings = { 'ink-total': ['note', { tolerance: 5 }] };
    assert.deepEqual(inkTotal(given)?.options, { tolerance: 5 });
    assert.equal(inkTotal(given)?.severity, 'note');
  });
  it('are not written to', () => {
    const given = {};
    inkTotal({ 'ink-total': ['note', given] });
    assert.deepEqual(given, {});
  });

  const wrong: [string, RuleSettings, RegExp][] = [
    ['an unknown rule', { 'no-rule': 'off' }, /no rule "no-rule"/],
    ['an unknown severity', { 'ink-total': 'fatal' as 'error' }, /"fatal" is no severity/],
    ['an unknown option', { 'ink-total': ['note', { limit: 3 }] }, /ink-total: .*additional properties/],
    ['an option out of range', { 'ink-total': ['note', { tolerance: -1 }] }, /tolerance must be >= 0/],
  ];
  for (const [what, settings, message] of wrong)
    it(`are refused for ${what}`, () =>
      assert.throws(
        () => activeRules(rules, settings),
        (error: Error) => error instanceof RuleSettingsError && message.test(error.message),
      ));

  it('have a schema that takes what is right and refuses what is wrong', () => {
    // words for editors, beside the standard
    const keywords = ['enumDescriptions'];
    const validate = new Ajv({ strict: true, keywords, allowUnionTypes: true, strictTuples: false }).compile(
      settingsSchema(rules),
    );
    for (const right of [
      {},
      { untagged: 'off' },
      { untagged: ['note'] },
      { untagged: ['error', { rgb: 'always' }] },
    ])
      assert.equal(validate(right), true, JSON.stringify(right));
    for (const [what, settings] of wrong) assert.equal(validate(settings), false, what);
  });
});
