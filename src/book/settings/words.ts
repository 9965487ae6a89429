// no-unit-test: names only, made into schemas that test/book/settings/validate.test.ts reads texts by
import { defaultTarget, lights, papers, processes } from '../../print';
import { rules } from '../../rules';
import { settingsSchema as ruleSettingsSchema } from '../../rules/settings';
import { houseSchema, type Schema, settingsSchema, type Words } from './schema';

/** The names of this version of Evengrey. */
const words: Words = { processes, papers, lights, rules: ruleSettingsSchema(rules) };

/** What a settings file is checked against: made once. */
export interface SettingsLanguage {
  settings: Schema;
  house: Schema;
  defaultTarget: typeof defaultTarget;
}

export const language: SettingsLanguage = {
  settings: settingsSchema(words),
  house: houseSchema(words),
  defaultTarget,
};
