import assert from 'node:assert/strict';
import { parsePointer } from '../../../src/picture/header/pointer';

const oid = '4d7a214614ab2935c943f9e0ff69d22eadbb8f32b1258daaa5e2ca24d17e2393';

describe('parsePointer', () => {
  it('reads the example of the specification', () => {
    // git-lfs docs/spec.md
    const text = `version https://git-lfs.github.com/spec/v1\noid sha256:${oid}\nsize 12345\n`;
    assert.deepEqual(parsePointer(text), { oid, size: 12345 });
  });

  it('refuses what only looks like one', () => {
    const head = 'version https://git-lfs.github.com/spec/v1\n';
    for (const text of [
      '',
      head,
      `${head}oid sha256:${oid}\n`,
      `${head}oid sha256:xyz\nsize 1\n`,
      `oid sha256:${oid}\nsize 1\n`,
      `${head}oid sha256:${oid}\nsize 1\n${' '.repeat(1024)}`,
    ])
      assert.equal(parsePointer(text), null);
  });
});
