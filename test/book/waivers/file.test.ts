import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { readWaivers, WAIVERS_FILE, writeWaivers } from '../../../src/book/waivers/file';
import { temporaryFolder } from '../support/folder';

const waiver = {
  rule: 'x',
  picture: 'a.tif',
  content: ['a'.repeat(64)],
  value: { share: 0.1 },
  says: 'Odd.',
  reason: '',
};

describe('a file of waivers', () => {
  it('is read as it was written, with comments that somebody added', async () => {
    const root = temporaryFolder();
    const file = path.join(root, WAIVERS_FILE);
    await writeWaivers(file, [waiver]);
    assert.deepEqual(fs.readdirSync(root), [WAIVERS_FILE], 'nothing beside it');
    fs.writeFileSync(file, `// ours\n${fs.readFileSync(file, 'utf8')}`);
    assert.deepEqual(await readWaivers(root), { waivers: [waiver], file: WAIVERS_FILE, problems: [] });
  });

  it('holds none where it is not there', async () =>
    assert.deepEqual(await readWaivers(temporaryFolder()), { waivers: [], file: null, problems: [] }));

  it('waives nothing where it is wrong, and says where', async () => {
    for (const [text, message] of [
      ['{ "waivers": [{ "rule": "x", "value": {} }] }', /^1:15: "content" is missing/],
      ['{ "waivers": [{ "rule": "x", "content": ["abc"], "value": {} }] }', /^1:/],
      ['{ "waviers": [] }', /^1:3: .*Did you mean "waivers"\?/m],
      ['[', /^1:/],
    ] as const) {
      const { waivers, problems } = await readWaivers(temporaryFolder({ [WAIVERS_FILE]: text }));
      assert.deepEqual(waivers, []);
      assert.match(problems.map(p => `${p.line}:${p.column}: ${p.message}`).join('\n'), message);
    }
    const root = temporaryFolder();
    fs.mkdirSync(path.join(root, WAIVERS_FILE));
    assert.match((await readWaivers(root)).problems[0].message, /is not a file/);
  });
});
