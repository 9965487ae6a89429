import type { ValidateFunction } from 'ajv';
import type { Severity } from '../shared/finding';
import type { Rule } from './rule';

/** `rules` of `evengrey.json`: rule id -> how much it matters, with options where it has any. */
export type RuleSettings = Record<string, RuleSetting>;
export type RuleSetting = 'off' | Severity | [Severity, Record<string, unknown>];

/** A rule that is switched on, as it was asked for. */
export interface ActiveRule {
  rule: Rule;
  severity: Severity;
  options: Record<string, unknown>;
}

export class RuleSettingsError extends Error {
  override name = 'RuleSettingsError';
}

const severities: readonly Severity[] = ['error', 'warning', 'note'];
const validators = new WeakMap<Rule, ValidateFunction>();

/** Loading the compiler of schemas, and compiling one, costs milliseconds, and most rules are given no options. */
function validator(rule: Rule): ValidateFunction {
  let validate = validators.get(rule);
  if (!validate) {
    const { Ajv } = require('ajv') as typeof import('ajv');
    validate = new Ajv({ useDefaults: true, allErrors: true }).compile(rule.options);
    validators.set(rule, validate);
  }
  return validate;
}

/** Where none are given nothing needs a check. */
function defaultsOf(rule: Rule): Record<string, unknown> {
  const entries = Object.entries(rule.options.properties);
  return structuredClone(Object.fromEntries(entries.map(([name, option]) => [name, option.default])));
}

function optionsOf(rule: Rule, given: Record<string, unknown>): Record<string, unknown> {
  const options = structuredClone(given);
  const validate = validator(rule);
  if (!validate(options)) {
    const wrong = validate.errors!.map(e => `${e.instancePath.slice(1) || 'options'} ${e.message}`);
    throw new RuleSettingsError(
      `rules: ${rule.id}: ${wrong.join('; ')}. See "evengrey explain ${rule.id}" for its options.`,
    );
  }
  return options;
}

/**
 * The rules to run, each with its severity and checked options.
 * @throws RuleSettingsError for an unknown rule, severity or option. Settings read from a file are checked with
 * `ruleSettingsSchema` first, which knows the line.
 */
export function activeRules(rules: readonly Rule[], settings: RuleSettings): ActiveRule[] {
  for (const id of Object.keys(settings))
    if (!rules.some(rule => rule.id === id)) throw new RuleSettingsError(`rules: there is no rule "${id}".`);
  return rules.flatMap(rule => {
    const setting = settings[rule.id] ?? rule.severity;
    if (setting === 'off') return [];
    const [severity, given] = Array.isArray(setting) ? setting : [setting, undefined];
    if (!severities.includes(severity))
      throw new RuleSettingsError(
        `rules: ${rule.id}: "${severity}" is no severity; use "off", "note", "warning" or "error".`,
      );
    return [{ rule, severity, options: given ? optionsOf(rule, given) : defaultsOf(rule) }];
  });
}

const SEVERITIES = {
  off: 'The rule is not asked',
  note: 'Worth knowing: it stands against nothing',
  warning: 'Likely to be seen in print',
  error: 'Not to be sent so: a check fails',
};

/** JSON schema (draft 07) of `rules` in `evengrey.json`, for the settings' own schema. */
export function settingsSchema(rules: readonly Rule[]): Record<string, unknown> {
  return {
    type: 'object',
    description:
      'How loudly each rule speaks: its severity, or [severity, options]. Left out: as each rule says of itself.',
    additionalProperties: false,
    properties: Object.fromEntries(
      rules.map(rule => [
        rule.id,
        {
          description: rule.description,
          default: rule.severity,
          anyOf: [
            { enum: Object.keys(SEVERITIES), enumDescriptions: Object.values(SEVERITIES) },
            {
              type: 'array',
              minItems: 1,
              maxItems: 2,
              items: [{ enum: ['note', 'warning', 'error'] }, rule.options],
            },
          ],
        },
      ]),
    ),
  };
}
