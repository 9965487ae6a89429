type Schema = Record<string, unknown>;

/** What an editor shows and completes by. */
const SHOWN = ['description', 'default', 'title', 'allowComments', 'allowTrailingCommas', '$schema'];
/** What holds schemas, by name or in a list. */
const BY_NAME = ['properties', 'patternProperties'];
const ALTERNATIVES = ['anyOf', 'oneOf', 'allOf'];
/** What says which values there are. */
const VALUES = ['type', 'enum', 'enumDescriptions', 'const'];

/**
 * A schema by which an editor completes and explains a file as by `schema`, and finds no fault in it: what is wrong there
 * is told by this program, once and in its own words. Every schema in it is one of two ways, the other of which takes
 * anything.
 */
export function withoutFaults(schema: Schema): Schema {
  const shown = pick(schema, SHOWN);
  const known: Schema = pick(schema, VALUES);
  for (const key of BY_NAME)
    if (key in schema)
      known[key] = Object.fromEntries(
        Object.entries(schema[key] as Record<string, Schema>).map(([name, one]) => [
          name,
          withoutFaults(one),
        ]),
      );
  for (const key of ALTERNATIVES)
    if (key in schema) known.anyOf = (schema[key] as Schema[]).map(withoutFaults);
  for (const key of ['additionalProperties', 'items', 'additionalItems']) {
    const inner = schema[key];
    if (Array.isArray(inner)) known[key] = inner.map(withoutFaults);
    else if (inner && typeof inner === 'object') known[key] = withoutFaults(inner as Schema);
  }
  return Object.keys(known).length ? { ...shown, anyOf: [known, {}] } : shown;
}

const pick = (schema: Schema, keys: readonly string[]): Schema =>
  Object.fromEntries(keys.filter(key => key in schema).map(key => [key, schema[key]]));
