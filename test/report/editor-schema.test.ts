import assert from 'node:assert/strict';
import Ajv from 'ajv';
import { language } from '../../src/book/settings/words';
import { withoutFaults } from '../../src/report/editor-schema';

const WRONG = [
  { process: 'no-such-process' },
  { proces: 'inkjet' },
  { textWidth: -3 },
  { paper: { lab: [1] } },
  { rules: { 'no-such-rule': 'off', untagged: 'loud' } },
  { targets: 'one' },
  'no settings',
];

describe('a schema for editors', () => {
  const faultsOf = (schema: Record<string, unknown>) => new Ajv({ strict: false }).compile(schema);
  const lenient = withoutFaults(language.settings);

  it('finds no fault where the whole one does', () => {
    const [whole, without] = [language.settings, lenient].map(faultsOf);
    for (const settings of WRONG) {
      assert.equal(whole(settings), false, JSON.stringify(settings));
      assert.equal(without(settings), true, JSON.stringify(settings));
    }
  });

  it('keeps every key with its words, and every value', () => {
    const words = (schema: unknown): string[] =>
      JSON.stringify(schema)
        .match(/"description":"(\\.|[^"\\])*"|"enum":\[[^\]]*\]/g)!
        .sort();
    assert.deepEqual(words(lenient), words(language.settings));
  });
});
