import Ajv from 'ajv';

/**
 * Validates strictly: a key that the schema does not describe is an error here, though readers of reports must bear
 * it. Returns what is wrong, '' for nothing.
 */
export function strictErrors(schema: object, value: unknown): string {
  const ajv = new Ajv({ strict: false, allErrors: true });
  const validate = ajv.compile(closed(schema) as object);
  return validate(value) ? '' : ajv.errorsText(validate.errors);
}

function closed(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(closed);
  if (node === null || typeof node !== 'object') return node;
  const copy = Object.fromEntries(Object.entries(node).map(([key, inner]) => [key, closed(inner)]));
  return 'properties' in copy && !('additionalProperties' in copy)
    ? { ...copy, additionalProperties: false }
    : copy;
}
