import schema from '@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json';
import Ajv from 'ajv-draft-04';
import addFormats from 'ajv-formats';

/**
 * What the schema of SARIF 2.1.0 finds wrong in a log; '' for nothing. The schema is the OASIS committee's 2.1.0-rtm.5,
 * the revision that became the standard, as the package @microsoft/jest-sarif (MIT) ships it.
 */
export function sarifErrors(log: unknown): string {
  const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
  addFormats(ajv);
  const validate = ajv.compile(schema);
  return validate(log) ? '' : ajv.errorsText(validate.errors);
}
