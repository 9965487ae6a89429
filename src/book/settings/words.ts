// no-unit-test: names only, made into schemas that test/book/settings/validate.test.ts reads texts by
import { lights, papers, processes } from '../../print';
import { rules } from '../../rules';
import { settingsSchema as ruleSettingsSchema } from '../../rules/settings';
import { houseSchema, type Schema, settingsSchema, type Words } from './schema';

/** The names of this version of Evengrey. */
const words: Words = { processes, papers, lights, rules: ruleSettingsSchema(rules) };

/** What a settings file is checked against: made once. */
export const language: { settings: Schema; house: Schema } = {
  settings: settingsSchema(words),
  house: houseSchema(words),
};
