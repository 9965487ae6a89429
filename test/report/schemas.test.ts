import assert from 'node:assert/strict';
import fs from 'node:fs';
import Ajv from 'ajv';
import { schemas } from '../../src/report/schemas';

describe('shipped schemas', () => {
  for (const [name, schema] of Object.entries(schemas)) {
    it(`${name} is a sound draft-07 schema`, () => {
      const ajv = new Ajv({ strict: false });
      assert.ok(ajv.validateSchema(schema), ajv.errorsText());
      assert.ok(fs.existsSync(`media/schemas/${name}`), 'the build writes it');
    });
  }
});
